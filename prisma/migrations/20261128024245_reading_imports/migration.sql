-- CreateTable
CREATE TABLE "ReadingImport" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "bayId" TEXT NOT NULL,
    "fileName" TEXT NOT NULL,
    "importedAt" INTEGER NOT NULL,
    "count" INTEGER NOT NULL,
    "takenBackAt" INTEGER,
    CONSTRAINT "ReadingImport_bayId_fkey" FOREIGN KEY ("bayId") REFERENCES "Bay" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Reading" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "bayId" TEXT NOT NULL,
    "at" INTEGER NOT NULL,
    "source" TEXT NOT NULL,
    "airC" REAL NOT NULL,
    "panelC" REAL,
    "humidityPercent" REAL,
    "sensorId" TEXT,
    "importId" TEXT NOT NULL DEFAULT '',
    "voidedAt" INTEGER,
    CONSTRAINT "Reading_bayId_fkey" FOREIGN KEY ("bayId") REFERENCES "Bay" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Reading_sensorId_fkey" FOREIGN KEY ("sensorId") REFERENCES "SensorToken" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);
INSERT INTO "new_Reading" ("airC", "at", "bayId", "humidityPercent", "id", "panelC", "sensorId", "source", "voidedAt") SELECT "airC", "at", "bayId", "humidityPercent", "id", "panelC", "sensorId", "source", "voidedAt" FROM "Reading";
DROP TABLE "Reading";
ALTER TABLE "new_Reading" RENAME TO "Reading";
CREATE UNIQUE INDEX "Reading_bayId_at_source_importId_key" ON "Reading"("bayId", "at", "source", "importId");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE INDEX "ReadingImport_bayId_importedAt_idx" ON "ReadingImport"("bayId", "importedAt");
