/*
 * Loaded before anything else (node --import): the whole process takes the instant LUSTRUM_TEST_NOW for the present, and
 * its clock runs on from there. LUSTRUM_TEST_BEGAN, the real instant the run began, keeps all its processes together.
 */
const { LUSTRUM_TEST_NOW, LUSTRUM_TEST_BEGAN } = process.env
const RealDate = Date
const shiftMs = RealDate.parse(LUSTRUM_TEST_NOW) - Number(LUSTRUM_TEST_BEGAN)
if (Number.isNaN(shiftMs)) throw new Error(`LUSTRUM_TEST_NOW=${LUSTRUM_TEST_NOW}: no instant`)
const now = () => RealDate.now() + shiftMs

globalThis.Date = new Proxy(RealDate, {
  construct: (date, given, made) => Reflect.construct(date, given.length > 0 ? given : [now()], made),
  apply: () => new RealDate(now()).toString(),
  get: (date, key, proxy) => (key === 'now' ? now : Reflect.get(date, key, proxy)),
})
RealDate.prototype.constructor = globalThis.Date

// The machine's own Node, which some tests start, may have none.
if (globalThis.Temporal) {
  const { Now, Instant } = globalThis.Temporal
  const instant = () => Instant.fromEpochMilliseconds(now())
  const zoned = (zone = Now.timeZoneId()) => instant().toZonedDateTimeISO(zone)
  Object.assign(Now, {
    instant,
    zonedDateTimeISO: zoned,
    plainDateTimeISO: zone => zoned(zone).toPlainDateTime(),
    plainDateISO: zone => zoned(zone).toPlainDate(),
    plainTimeISO: zone => zoned(zone).toPlainTime(),
  })
}
