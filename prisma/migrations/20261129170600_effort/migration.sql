-- CreateTable
CREATE TABLE "EffortSettings" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT DEFAULT 1,
    "promisePercent" INTEGER,
    "version" INTEGER NOT NULL DEFAULT 1
);

-- AlterTable: added at its end rather than written anew, so that its rows stay where they are.
ALTER TABLE "Job" ADD COLUMN "stretch" REAL NOT NULL DEFAULT 1;
