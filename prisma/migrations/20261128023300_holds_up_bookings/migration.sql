-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_ShelfProduct" (
    "productId" TEXT NOT NULL PRIMARY KEY,
    "unit" TEXT NOT NULL,
    "densityGPerMl" REAL,
    "lifeAfterOpeningDays" INTEGER,
    "lifeUnlimited" BOOLEAN NOT NULL DEFAULT false,
    "storageLeastC" REAL,
    "storageMostC" REAL,
    "place" TEXT NOT NULL DEFAULT '',
    "serviceClass" TEXT NOT NULL,
    "holdsUpBookings" BOOLEAN NOT NULL DEFAULT false,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "ShelfProduct_productId_fkey" FOREIGN KEY ("productId") REFERENCES "Product" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_ShelfProduct" ("densityGPerMl", "lifeAfterOpeningDays", "lifeUnlimited", "place", "productId", "serviceClass", "storageLeastC", "storageMostC", "unit", "version") SELECT "densityGPerMl", "lifeAfterOpeningDays", "lifeUnlimited", "place", "productId", "serviceClass", "storageLeastC", "storageMostC", "unit", "version" FROM "ShelfProduct";
DROP TABLE "ShelfProduct";
ALTER TABLE "new_ShelfProduct" RENAME TO "ShelfProduct";
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- No coat without its coating and its topper; everything else can be fetched while the car is there.
UPDATE "ShelfProduct" SET "holdsUpBookings" = true
WHERE "productId" IN (SELECT "id" FROM "Product" WHERE "kind" IN ('coating', 'topper'));
