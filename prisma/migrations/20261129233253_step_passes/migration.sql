-- CreateTable
CREATE TABLE "StepPass" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "jobId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "fromCrewId" TEXT NOT NULL,
    "toCrewId" TEXT NOT NULL,
    "at" INTEGER NOT NULL,
    CONSTRAINT "StepPass_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "StepPass_jobId_idx" ON "StepPass"("jobId");
