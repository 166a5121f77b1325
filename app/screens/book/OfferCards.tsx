import { VisuallyHidden } from '@mantine/core'
import type { OffersView, PlaceView } from '../../../main/api/views.ts'
import { Facts } from '../../parts/Facts.tsx'
import { dateWords, durationWords, longWords, nearWords } from '../../parts/time.ts'
import styles from './Book.module.css'
import { type Chosen, type OfferKind, offerKinds } from './booking.ts'
import { MiniBoard } from './MiniBoard.tsx'
import { ShelfPart } from './ShelfPart.tsx'

interface Props {
  offers: OffersView
  /** The owner asked for a day. */
  asked: boolean
  chosen: Chosen
  choose(chosen: Chosen): void
}

function titleOf(kind: OfferKind, offers: OffersView, asked: boolean): string {
  if (kind === 'soonest') return 'Soonest home'
  if (kind === 'leastBlocked') return 'Fewest blocked hours'
  return asked ? `Brought ${dateWords(offers.askedDate)} or after` : 'Earliest drop-off'
}

/** The three offers side by side; arrows or a click choose one. */
export function OfferCards({ offers, asked, chosen, choose }: Props) {
  return (
    <fieldset className={styles.offers}>
      <VisuallyHidden component="legend">Offers</VisuallyHidden>
      {offerKinds.map(kind => {
        const offer = offers[kind]
        const title = titleOf(kind, offers, asked)
        if (!offer.feasible)
          return (
            <div key={kind} className={styles.offer}>
              <h3>{title}</h3>
              <b className={styles.when}>Not possible</b>
              <Reasons words={offer.reasons} />
            </div>
          )
        const own = chosen?.kind === kind
        const sooner = own && chosen.offer === offer.ifHere?.offer
        return (
          <div key={kind} className={styles.offer} data-chosen={own}>
            <label>
              <span className={styles.offerHead}>
                <input
                  type="radio"
                  name="offer"
                  checked={own && !sooner}
                  onChange={() => choose({ kind, offer })}
                  aria-label={`${title}: home ${longWords(offer.handoverAt, offers.zone)}`}
                />
                <h3>{title}</h3>
              </span>
              <OfferFacts offer={offer} offers={offers} />
            </label>
            {offer.ifHere && (
              <IfHere
                words={offer.ifHere.words}
                handover={longWords(offer.ifHere.offer.handoverAt, offers.zone)}
                dropOff={nearWords(offer.ifHere.offer.dropOffAt, offers.zone, offers.nowAt)}
                chosen={sooner}
                choose={() => offer.ifHere && choose({ kind, offer: offer.ifHere.offer })}
              />
            )}
          </div>
        )
      })}
    </fieldset>
  )
}

interface IfHereProps {
  words: string
  handover: string
  dropOff: string
  chosen: boolean
  choose(): void
}

/** The place that bays and crew allow, were the goods here in time: the desk may know that they will be. */
function IfHere({ words, handover, dropOff, chosen, choose }: IfHereProps) {
  return (
    <label className={styles.short}>
      <input type="radio" name="offer" checked={chosen} onChange={choose} /> {words}: home <b>{handover}</b>,
      drop off by {dropOff}
    </label>
  )
}

/** What an offer promises, as a picture and in figures, and what binds it. */
export function OfferFacts({ offer, offers }: { offer: PlaceView; offers: OffersView }) {
  const when = (at: number) => nearWords(at, offers.zone, offers.nowAt)
  return (
    <>
      <b className={styles.when}>{longWords(offer.handoverAt, offers.zone)}</b>
      <MiniBoard offer={offer} offers={offers} />
      <Facts
        of={{
          'Drop off by': when(offer.dropOffAt),
          'May leave, at the least': when(offer.safeAt),
          Advised: when(offer.advisedAt),
          ...(Object.keys(offers.profiles).length > 0 && {
            'Keep dry':
              offers.coveredBy === null
                ? 'stays here until it may get wet'
                : 'leaves under cover, confirmed by name',
          }),
          'Blocks while open': durationWords(offer.blockedOpenMin),
          'Cures while closed': durationWords(offer.closedCureMin),
          'Changes of bay': offer.moves,
        }}
      />
      <ShelfPart shelf={offer.shelf} />
      <Reasons words={offer.reasons} />
    </>
  )
}

function Reasons({ words }: { words: string[] }) {
  return (
    <div className={styles.why}>
      {words.map(line => (
        <p key={line}>{line}</p>
      ))}
    </div>
  )
}
