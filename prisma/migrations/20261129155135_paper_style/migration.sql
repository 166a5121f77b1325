-- CreateTable
CREATE TABLE "PaperStyle" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT DEFAULT 1,
    "paper" TEXT,
    "colour" TEXT NOT NULL DEFAULT '#31456b',
    "logoFileId" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "PaperStyle_logoFileId_fkey" FOREIGN KEY ("logoFileId") REFERENCES "StoredFile" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);
