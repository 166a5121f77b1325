-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Treatment" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "summary" TEXT NOT NULL DEFAULT '',
    "prices" JSONB NOT NULL,
    "needsTwoPeople" BOOLEAN NOT NULL DEFAULT false,
    "archivedAt" INTEGER,
    "version" INTEGER NOT NULL DEFAULT 1
);
INSERT INTO "new_Treatment" ("archivedAt", "id", "name", "position", "prices", "summary", "version") SELECT "archivedAt", "id", "name", "position", "prices", "summary", "version" FROM "Treatment";
DROP TABLE "Treatment";
ALTER TABLE "new_Treatment" RENAME TO "Treatment";
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;
