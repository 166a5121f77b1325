/** Fills the database of a data folder with a small generated shop: node tests/bench/years/fillFolder.ts DIR YEARS */

import { migrationsDir } from '../../../main/hosts/build.ts'
import { databaseFile } from '../../../main/hosts/dataFolder.ts'
import { fillYears, smallShop } from './fillYears.ts'

const [dataDir = '', years] = process.argv.slice(2)
await fillYears(databaseFile(dataDir), { dir: migrationsDir }, { ...smallShop, years: Number(years) })
