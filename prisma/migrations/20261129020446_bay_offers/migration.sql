-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Bay" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "capabilities" JSONB NOT NULL,
    "offers" JSONB NOT NULL DEFAULT [],
    "archivedAt" INTEGER,
    "version" INTEGER NOT NULL DEFAULT 1
);
INSERT INTO "new_Bay" ("archivedAt", "capabilities", "offers", "id", "name", "position", "version") SELECT "archivedAt", "capabilities", '[]', "id", "name", "position", "version" FROM "Bay";
DROP TABLE "Bay";
ALTER TABLE "new_Bay" RENAME TO "Bay";
CREATE TABLE "new_TreatmentStep" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "treatmentId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "stage" TEXT NOT NULL,
    "needs" TEXT NOT NULL,
    "asks" JSONB NOT NULL DEFAULT [],
    "skill" TEXT,
    "crew" INTEGER NOT NULL DEFAULT 1,
    "splittable" BOOLEAN NOT NULL DEFAULT false,
    "sameBay" BOOLEAN NOT NULL DEFAULT false,
    "waitMin" INTEGER,
    "waitMax" INTEGER,
    "nextWithinMin" INTEGER,
    "missed" TEXT,
    "missedMin" INTEGER,
    "minutes" JSONB NOT NULL,
    "byCondition" BOOLEAN NOT NULL DEFAULT false,
    "productId" TEXT,
    "draws" JSONB NOT NULL DEFAULT [],
    CONSTRAINT "TreatmentStep_treatmentId_fkey" FOREIGN KEY ("treatmentId") REFERENCES "Treatment" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "TreatmentStep_productId_fkey" FOREIGN KEY ("productId") REFERENCES "Product" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);
INSERT INTO "new_TreatmentStep" ("asks", "byCondition", "crew", "draws", "id", "minutes", "missed", "missedMin", "name", "needs", "nextWithinMin", "position", "productId", "sameBay", "skill", "splittable", "stage", "treatmentId", "waitMax", "waitMin") SELECT '[]', "byCondition", "crew", "draws", "id", "minutes", "missed", "missedMin", "name", "needs", "nextWithinMin", "position", "productId", "sameBay", "skill", "splittable", "stage", "treatmentId", "waitMax", "waitMin" FROM "TreatmentStep";
DROP TABLE "TreatmentStep";
ALTER TABLE "new_TreatmentStep" RENAME TO "TreatmentStep";
CREATE INDEX "TreatmentStep_treatmentId_position_idx" ON "TreatmentStep"("treatmentId", "position");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;
