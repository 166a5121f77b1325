-- CreateTable
CREATE TABLE "TestSpot" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "jobId" TEXT NOT NULL,
    "combination" TEXT NOT NULL,
    "perPanelMin" INTEGER NOT NULL,
    "lostUm" REAL,
    "glossBefore" REAL,
    "glossAfter" REAL,
    "who" TEXT NOT NULL,
    "at" INTEGER NOT NULL,
    "answer" TEXT,
    "answeredBy" TEXT,
    "answeredHow" TEXT,
    "answeredAt" INTEGER,
    "before" JSONB,
    CONSTRAINT "TestSpot_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE UNIQUE INDEX "TestSpot_jobId_key" ON "TestSpot"("jobId");
