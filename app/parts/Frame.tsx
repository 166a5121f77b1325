import { Link, Outlet } from '@tanstack/react-router'
import icon from '../../assets/icon.svg'
import styles from './Frame.module.css'
import { screens } from './screens.ts'

/** The bar above every screen, and the screen below it. */
export function Frame() {
  return (
    <div className={styles.frame}>
      <a className={styles.skip} href="#screen">
        Skip to the screen
      </a>
      <nav className={styles.bar} aria-label="Screens">
        <span className={styles.name}>
          <img src={icon} width={22} height={22} alt="" />
          Lustrum
        </span>
        {screens.map(screen => (
          <Link key={screen.to} to={screen.to} className={styles.link}>
            {screen.label}
          </Link>
        ))}
      </nav>
      <main id="screen" className={styles.main} tabIndex={-1}>
        <Outlet />
      </main>
    </div>
  )
}
