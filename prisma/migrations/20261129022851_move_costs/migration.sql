-- CreateTable
CREATE TABLE "MoveCost" (
    "seq" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "averageMinor" INTEGER NOT NULL,
    "fifoMinor" INTEGER NOT NULL
);

-- CreateTable
CREATE TABLE "CostPoint" (
    "productId" TEXT NOT NULL PRIMARY KEY,
    "average" JSONB NOT NULL,
    "fifo" JSONB NOT NULL
);
