-- CreateTable
CREATE TABLE "WasteRule" (
    "stream" TEXT NOT NULL PRIMARY KEY,
    "rule" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1
);
