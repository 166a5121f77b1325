-- AlterTable
ALTER TABLE "JobStep" ADD COLUMN "missed" TEXT;
ALTER TABLE "JobStep" ADD COLUMN "missedMin" INTEGER;
ALTER TABLE "JobStep" ADD COLUMN "missedReason" TEXT;

-- AlterTable
ALTER TABLE "TreatmentStep" ADD COLUMN "missed" TEXT;
ALTER TABLE "TreatmentStep" ADD COLUMN "missedMin" INTEGER;
ALTER TABLE "TreatmentStep" ADD COLUMN "nextWithinMin" INTEGER;

-- What was wiped is coated within 45 minutes, or wiped again (common practice, no source): for every wipe that a coat
-- or topper follows, of what is sold and of what is booked and not begun.
UPDATE "TreatmentStep" SET "nextWithinMin" = 45, "missed" = 'again'
WHERE "stage" = 'wipe' AND EXISTS (
    SELECT 1 FROM "TreatmentStep" n
    WHERE n."treatmentId" = "TreatmentStep"."treatmentId" AND n."position" = "TreatmentStep"."position" + 1
      AND n."stage" IN ('coat', 'topper') AND coalesce(n."waitMin", 0) <= 45
);
UPDATE "JobStep" SET "missed" = 'again'
WHERE "stage" = 'wipe' AND "kind" = 'work' AND EXISTS (
    SELECT 1 FROM "JobStep" n JOIN "Job" j ON j."id" = n."jobId"
    WHERE n."jobId" = "JobStep"."jobId" AND n."position" = "JobStep"."position" + 1
      AND n."stage" IN ('coat', 'topper') AND n."kind" = 'work' AND n."actualStartAt" IS NULL
      AND coalesce(n."waitMin", 0) <= 45 AND j."status" IN ('held', 'booked', 'inShop')
);
UPDATE "JobStep" SET "waitMax" = min(coalesce("waitMax", 45), 45)
WHERE EXISTS (
    SELECT 1 FROM "JobStep" w
    WHERE w."jobId" = "JobStep"."jobId" AND w."position" = "JobStep"."position" - 1 AND w."missed" = 'again'
);
UPDATE "Shop" SET "promisesChanged" = true
WHERE EXISTS (SELECT 1 FROM "TreatmentStep" WHERE "nextWithinMin" IS NOT NULL);
