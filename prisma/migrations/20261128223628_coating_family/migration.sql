-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Product" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "family" TEXT NOT NULL DEFAULT 'paint',
    "cureProfile" JSONB,
    "archivedAt" INTEGER,
    "version" INTEGER NOT NULL DEFAULT 1
);
INSERT INTO "new_Product" ("archivedAt", "cureProfile", "id", "kind", "name", "version") SELECT "archivedAt", "cureProfile", "id", "kind", "name", "version" FROM "Product";
DROP TABLE "Product";
ALTER TABLE "new_Product" RENAME TO "Product";
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;
