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
    "gridMin" INTEGER NOT NULL DEFAULT 15,
    "handoverRule" TEXT NOT NULL DEFAULT 'minimum',
    "weekly" JSONB NOT NULL,
    "conditionFactors" JSONB NOT NULL,
    "phone" TEXT,
    "email" TEXT,
    "address" TEXT,
    "demo" BOOLEAN NOT NULL DEFAULT false,
    "promisesChanged" BOOLEAN NOT NULL DEFAULT false,
    "version" INTEGER NOT NULL DEFAULT 1
);
INSERT INTO "new_Shop" ("address", "conditionFactors", "country", "currency", "demo", "email", "gridMin", "handoverRule", "id", "name", "phone", "units", "version", "weekly", "zone") SELECT "address", "conditionFactors", "country", "currency", "demo", "email", "gridMin", "handoverRule", "id", "name", "phone", "units", "version", "weekly", "zone" FROM "Shop";
DROP TABLE "Shop";
ALTER TABLE "new_Shop" RENAME TO "Shop";
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- A topper's times come from a data sheet or are none: figures of common practice go, and with the sheet's stand the
-- toppers that a treatment puts on the coating, or else every topper of the shop.
UPDATE "Product" SET "cureProfile" = json_remove(
    json_set(
        "cureProfile",
        '$.windowRows', json('[]'),
        '$.topper', json(CASE WHEN "kind" = 'coating' AND json_extract("cureProfile", '$.sources.topperMin') = 'data sheet' THEN json_object(
            'minMin', json_extract("cureProfile", '$.topperMin'),
            'advisedMin', CASE json_extract("cureProfile", '$.sources.topperAdvisedMin')
                WHEN 'data sheet' THEN json_extract("cureProfile", '$.topperAdvisedMin')
                ELSE json_extract("cureProfile", '$.topperMin') END,
            'maxMin', CASE json_extract("cureProfile", '$.sources.topperMaxMin')
                WHEN 'data sheet' THEN json_extract("cureProfile", '$.topperMaxMin') END,
            'productIds', json(CASE WHEN EXISTS (
                SELECT 1 FROM "TreatmentStep" c JOIN "TreatmentStep" t ON t."treatmentId" = c."treatmentId"
                WHERE c."productId" = "Product"."id" AND t."stage" = 'topper' AND t."productId" IS NOT NULL
            ) THEN (
                SELECT json_group_array(DISTINCT t."productId")
                FROM "TreatmentStep" c JOIN "TreatmentStep" t ON t."treatmentId" = c."treatmentId"
                WHERE c."productId" = "Product"."id" AND t."stage" = 'topper' AND t."productId" IS NOT NULL
            ) ELSE (
                SELECT json_group_array(p."id") FROM "Product" p WHERE p."kind" = 'topper'
            ) END)
        ) ELSE 'null' END)
    ),
    '$.topperMin', '$.topperAdvisedMin', '$.topperMaxMin',
    '$.sources.topperMin', '$.sources.topperAdvisedMin', '$.sources.topperMaxMin'
) WHERE json_valid("cureProfile") AND json_type("cureProfile", '$.topperMin') IS NOT NULL;

UPDATE "Shop" SET "promisesChanged" = true;
