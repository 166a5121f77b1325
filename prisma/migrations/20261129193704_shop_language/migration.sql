-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Shop" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT DEFAULT 1,
    "name" TEXT NOT NULL,
    "zone" TEXT NOT NULL,
    "currency" TEXT NOT NULL,
    "units" TEXT NOT NULL DEFAULT 'metric',
    "country" TEXT NOT NULL DEFAULT 'US',
    "language" TEXT NOT NULL DEFAULT 'en',
    "gridMin" INTEGER NOT NULL DEFAULT 15,
    "handoverRule" TEXT NOT NULL DEFAULT 'minimum',
    "weekly" JSONB NOT NULL,
    "conditionFactors" JSONB NOT NULL,
    "outsideUsual" JSONB,
    "phone" TEXT,
    "email" TEXT,
    "address" TEXT,
    "demo" BOOLEAN NOT NULL DEFAULT false,
    "promisesChanged" BOOLEAN NOT NULL DEFAULT false,
    "version" INTEGER NOT NULL DEFAULT 1
);
INSERT INTO "new_Shop" ("address", "conditionFactors", "country", "currency", "demo", "email", "gridMin", "handoverRule", "id", "name", "outsideUsual", "phone", "promisesChanged", "units", "version", "weekly", "zone") SELECT "address", "conditionFactors", "country", "currency", "demo", "email", "gridMin", "handoverRule", "id", "name", "outsideUsual", "phone", "promisesChanged", "units", "version", "weekly", "zone" FROM "Shop";
DROP TABLE "Shop";
ALTER TABLE "new_Shop" RENAME TO "Shop";
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;
