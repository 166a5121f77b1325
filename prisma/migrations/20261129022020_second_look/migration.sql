-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Inspection" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "layerId" TEXT NOT NULL,
    "onDay" TEXT NOT NULL,
    "working" BOOLEAN NOT NULL,
    "panels" JSONB,
    "secondLook" BOOLEAN NOT NULL DEFAULT false,
    "exposure" REAL NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "at" INTEGER NOT NULL,
    "who" TEXT NOT NULL,
    "voidedAt" INTEGER,
    CONSTRAINT "Inspection_layerId_fkey" FOREIGN KEY ("layerId") REFERENCES "Layer" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_Inspection" ("at", "exposure", "id", "layerId", "note", "onDay", "voidedAt", "who", "working") SELECT "at", "exposure", "id", "layerId", "note", "onDay", "voidedAt", "who", "working" FROM "Inspection";
DROP TABLE "Inspection";
ALTER TABLE "new_Inspection" RENAME TO "Inspection";
CREATE INDEX "Inspection_layerId_idx" ON "Inspection"("layerId");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;
