-- A coat is levelled while it is wet, not when it is tack-free: a step by such a name right behind a coat becomes part of
-- it. Its row stays, with its minutes; booked cars keep the steps they were sold with.
UPDATE "TreatmentStep" SET "stage" = 'level'
WHERE "stage" = 'finish' AND "productId" IS NULL
  AND (lower("name") LIKE '%level%' OR lower("name") LIKE '%high spot%')
  AND EXISTS (
    SELECT 1 FROM "TreatmentStep" c
    WHERE c."treatmentId" = "TreatmentStep"."treatmentId" AND c."position" = "TreatmentStep"."position" - 1
      AND c."stage" = 'coat'
  );
UPDATE "Shop" SET "promisesChanged" = true WHERE EXISTS (SELECT 1 FROM "TreatmentStep" WHERE "stage" = 'level');
