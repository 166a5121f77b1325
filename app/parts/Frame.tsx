import { Kbd, UnstyledButton, useMantineColorScheme } from '@mantine/core'
import { IconSearch } from '@tabler/icons-react'
import { Link, Outlet, useNavigate } from '@tanstack/react-router'
import { useEffect, useMemo, useState } from 'react'
import icon from '../../assets/icon.svg'
import { languageNow, say } from '../../main/domain/language/index.ts'
import { useShop } from '../data/shop.ts'
import { ConnectionLine } from './ConnectionLine.tsx'
import { CureNotices } from './CureNotices.tsx'
import type { CommandContext } from './commands.ts'
import { FindPalette } from './FindPalette.tsx'
import styles from './Frame.module.css'
import { KeysHelp } from './KeysHelp.tsx'
import { palette } from './palette.ts'
import { SchemeMenu } from './SchemeMenu.tsx'
import { ScanEars } from './scans/ScanEars.tsx'
import { screens } from './screens.ts'
import { useJumpKeys } from './useJumpKeys.ts'
import { useTakeBackKey } from './useTakeBack.ts'

/** The bar above every screen, and the screen below it. */
export function Frame() {
  const navigate = useNavigate()
  const { setColorScheme } = useMantineColorScheme()
  const [keysShown, setKeysShown] = useState(false)
  const context = useMemo<CommandContext>(
    () => ({
      go: to => void navigate({ to }),
      setScheme: setColorScheme,
      showKeys: () => setKeysShown(true),
    }),
    [navigate, setColorScheme],
  )
  const waiting = useJumpKeys(context)
  useTakeBackKey()
  const { language } = useShop()
  // What the modules call things was said as they were read: another language begins with another page.
  useEffect(() => {
    if (language !== languageNow()) location.reload()
  }, [language])
  return (
    <div className={styles.frame}>
      <a className={styles.skip} href="#screen">
        {say('Skip to the screen')}
      </a>
      <nav className={styles.bar} aria-label={say('Screens')}>
        <span className={styles.name}>
          <img src={icon} width={22} height={22} alt="" />
          {say('Lustrum')}
        </span>
        <div className={styles.links}>
          {screens.map(screen => (
            <Link
              key={screen.to}
              to={screen.to}
              className={styles.link}
              activeOptions={{ exact: screen.to === '/' }}
            >
              {screen.label}
              {waiting === 'g' && (
                <Kbd className={styles.key} aria-hidden="true">
                  {screen.key.toUpperCase()}
                </Kbd>
              )}
            </Link>
          ))}
        </div>
        <UnstyledButton className={styles.find} onClick={palette.open} aria-keyshortcuts="Control+K">
          <IconSearch size="1rem" aria-hidden="true" />
          <span>{say('Find')}</span>
          <Kbd aria-hidden="true">{say('Ctrl K')}</Kbd>
        </UnstyledButton>
        <UnstyledButton
          className={styles.help}
          onClick={() => setKeysShown(true)}
          aria-keyshortcuts="?"
          aria-label={say('Help')}
        >
          <Kbd aria-hidden="true">?</Kbd>
        </UnstyledButton>
        <SchemeMenu />
      </nav>
      <main id="screen" className={styles.main} tabIndex={-1}>
        <ConnectionLine>
          <Outlet />
        </ConnectionLine>
      </main>
      <CureNotices />
      <ScanEars />
      <FindPalette context={context} />
      <KeysHelp opened={keysShown} onClose={() => setKeysShown(false)} />
    </div>
  )
}
