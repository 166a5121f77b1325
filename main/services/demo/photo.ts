/** A photo of the demo shop's first car: drawn, for no real car is in it. */
import { dirname } from 'node:path'
import { drawnPhoto } from '../../store/photos/drawnPhoto.ts'
import { type MadePhoto, makePhoto } from '../../store/photos/makePhoto.ts'
import { keepPhoto } from '../../store/photos/photoFiles.ts'
import type { Desk } from '../desk/desk.ts'

/** The left doors in grey light, their gap, a handle, and a scratch that goes down to the primer. */
const doors = `<svg xmlns="http://www.w3.org/2000/svg" width="960" height="720" viewBox="0 0 960 720">
<defs>
<linearGradient id="paint" x1="0" y1="0" x2="0" y2="1">
<stop offset="0" stop-color="#5b6b80"/><stop offset="0.35" stop-color="#8fa0b4"/>
<stop offset="0.42" stop-color="#34445a"/><stop offset="1" stop-color="#1d2836"/>
</linearGradient>
<radialGradient id="lamp"><stop offset="0" stop-color="#fff" stop-opacity="0.85"/><stop offset="1" stop-color="#fff" stop-opacity="0"/></radialGradient>
</defs>
<rect width="960" height="720" fill="url(#paint)"/>
<ellipse cx="300" cy="170" rx="210" ry="46" fill="url(#lamp)"/>
<ellipse cx="720" cy="150" rx="160" ry="34" fill="url(#lamp)"/>
<path d="M540 0C530 240 548 480 536 720" fill="none" stroke="#0b1119" stroke-width="7"/>
<rect x="610" y="268" width="190" height="34" rx="17" fill="#223044" stroke="#7c8ca0" stroke-width="3"/>
<path d="M150 470C230 452 330 448 452 421" fill="none" stroke="#c9c4b4" stroke-width="6" stroke-linecap="round"/>
<path d="M152 475C232 457 330 453 450 426" fill="none" stroke="#0f1620" stroke-width="2" stroke-linecap="round"/>
</svg>`

/** Made ready before the act that names it, and kept on the disk. */
export async function demoPhoto({ store }: Desk): Promise<MadePhoto> {
  const photo = await makePhoto(await drawnPhoto(doors), 'left doors.png')
  keepPhoto(dirname(store.source.file), photo)
  return photo
}
