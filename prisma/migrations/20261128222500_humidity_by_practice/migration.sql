-- Common practice says 40 to 65 % relative humidity; what a data sheet gave, or somebody typed, stays.
UPDATE "Product" SET "cureProfile" = json_set("cureProfile", '$.humidity', json('{"minPercent":40,"maxPercent":65}'))
WHERE json_valid("cureProfile")
  AND json_extract("cureProfile", '$.sources.humidity') = 'common practice'
  AND json_extract("cureProfile", '$.humidity.minPercent') = 20
  AND json_extract("cureProfile", '$.humidity.maxPercent') = 80;
