import { EventEmitter } from 'node:events'
import type * as Electron from 'electron'

/** An object of which only what is given may be touched: anything else the code reaches for is an error in the test. */
export function strict<T extends object>(name: string, known: Partial<T>): T {
  return new Proxy(known as T, {
    get(target, key) {
      if (key in target) return Reflect.get(target, key)
      // Asked of every value by promises, and by the test runner when it prints one.
      if (typeof key === 'symbol' || key === 'then' || key === 'toJSON') return undefined
      throw new Error(`The stand-in for ${name} has no "${key}": add it, with what the real one does.`)
    },
    set(_target, key) {
      throw new Error(`The stand-in for ${name} was given a "${String(key)}".`)
    },
  })
}

type Handler = (request: Request) => Response | Promise<Response>
type Listener = (...args: never[]) => void

export interface Contents {
  contents: Electron.WebContents
  events: EventEmitter
  openHandler: Parameters<Electron.WebContents['setWindowOpenHandler']>[0] | null
  printed: number
}

export interface FakeWindow {
  options: Electron.BrowserWindowConstructorOptions
  web: Contents
  events: EventEmitter
  /** What was done to it, in order. */
  done: string[]
  minimized: boolean
}

/** What the code did to the shell. */
export interface Seen {
  paths: Record<string, string>
  schemes: Electron.CustomScheme[]
  handlers: Map<string, Handler>
  sandboxed: boolean
  request: Parameters<Electron.Session['setPermissionRequestHandler']>[0]
  check: Parameters<Electron.Session['setPermissionCheckHandler']>[0]
  device: Parameters<Electron.Session['setDevicePermissionHandler']>[0]
  menu: Electron.MenuItemConstructorOptions[]
  windows: FakeWindow[]
  errors: string[]
  /** What the system was asked to open. */
  opened: string[]
  quits: number
  exits: number[]
}

export interface ShellOptions {
  /** Whether this start is the first on its folder. */
  first?: boolean
  packaged?: boolean
  screens?: Electron.Rectangle[]
  /** What the person chooses in the dialog that asks where to save, given what it proposes. */
  saveAs?: (proposed: string) => string
  /** The copies the person chooses where a start was refused, one after another; then it is closed. */
  copies?: string[]
  /** Called when the window has been told to load a page. */
  onLoad?: (address: string) => void
}

function makeContents(url: () => string): Contents {
  const events = new EventEmitter()
  const web: Contents = { contents: undefined as never, events, openHandler: null, printed: 0 }
  web.contents = strict<Electron.WebContents>('webContents', {
    on: ((name: string, listener: Listener) => events.on(name, listener as never)) as never,
    getURL: url,
    print: () => {
      web.printed++
    },
    setWindowOpenHandler: handler => {
      web.openHandler = handler
    },
  })
  return web
}

/** A stand-in for the shell that keeps what was done to it; typed by the real one, and strict. */
export function makeShell({
  first = true,
  packaged = false,
  screens = [{ x: 0, y: 0, width: 1920, height: 1040 }],
  saveAs = () => '',
  copies = [],
  onLoad = () => {},
}: ShellOptions = {}) {
  const appEvents = new EventEmitter()
  const seen: Seen = {
    paths: {},
    schemes: [],
    handlers: new Map(),
    sandboxed: false,
    request: null,
    check: null,
    device: null,
    menu: [],
    windows: [],
    errors: [],
    opened: [],
    quits: 0,
    exits: [],
  }
  const app = strict<Electron.App>('app', {
    isPackaged: packaged,
    setName: () => {},
    getPath: name => seen.paths[name] ?? `/desk/${name}`,
    setPath: (name, path) => {
      seen.paths[name] = path
    },
    requestSingleInstanceLock: () => {
      // The real lock is one for each userData folder.
      if (!seen.paths.userData) throw new Error('The lock was asked for before userData was set.')
      return first
    },
    enableSandbox: () => {
      seen.sandboxed = true
    },
    on: ((name: string, listener: Listener) => appEvents.on(name, listener as never)) as never,
    whenReady: () => Promise.resolve(),
    quit: () => {
      seen.quits++
      let prevented = false
      appEvents.emit('will-quit', { preventDefault: () => (prevented = true) })
      if (!prevented) seen.exits.push(0)
    },
    exit: code => {
      seen.exits.push(code ?? 0)
    },
  })

  class BrowserWindow {
    constructor(options: Electron.BrowserWindowConstructorOptions) {
      const events = new EventEmitter()
      let url = ''
      const web = makeContents(() => url)
      const window: FakeWindow = { options, web, events, done: [], minimized: false }
      const did = (what: string) => () => {
        window.done.push(what)
      }
      const bounds = {
        x: options.x ?? 10,
        y: options.y ?? 20,
        width: options.width ?? 0,
        height: options.height ?? 0,
      }
      seen.windows.push(window)
      appEvents.emit('web-contents-created', {}, web.contents)
      // biome-ignore lint/correctness/noConstructorReturn: the stand-in itself is what `new` must give.
      return strict<Electron.BrowserWindow>('window', {
        webContents: web.contents,
        on: ((name: string, listener: Listener) => events.on(name, listener as never)) as never,
        once: ((name: string, listener: Listener) => events.once(name, listener as never)) as never,
        loadURL: async address => {
          url = address
          window.done.push(`load ${address}`)
          events.emit('ready-to-show')
          onLoad(address)
        },
        show: did('show'),
        focus: did('focus'),
        restore: did('restore'),
        maximize: did('maximize'),
        isMinimized: () => window.minimized,
        isMaximized: () => window.done.includes('maximize'),
        getNormalBounds: () => bounds,
      }) as never
    }
  }

  const shell = {
    app,
    BrowserWindow: BrowserWindow as unknown as typeof Electron.BrowserWindow,
    dialog: strict<Electron.Dialog>('dialog', {
      showErrorBox: (_title, words) => {
        seen.errors.push(words)
      },
      showMessageBox: (async ({ message, buttons = [] }: Electron.MessageBoxOptions) => {
        seen.errors.push(message)
        return { response: buttons.indexOf(copies.length > 0 ? 'Restore from a copy' : 'Close') }
      }) as never,
      showOpenDialog: (async () => {
        const filePath = copies.shift()
        return { canceled: !filePath, filePaths: filePath ? [filePath] : [] }
      }) as never,
      showSaveDialog: (async ({ defaultPath = '' }: Electron.SaveDialogOptions) => {
        const filePath = saveAs(defaultPath)
        return { canceled: filePath === '', filePath }
      }) as never,
    }),
    shell: strict<typeof Electron.shell>('shell', {
      openExternal: async address => {
        seen.opened.push(address)
      },
      openPath: async path => {
        seen.opened.push(path)
        return ''
      },
    }),
    Menu: strict<typeof Electron.Menu>('Menu', {
      buildFromTemplate: template => {
        seen.menu = template as Electron.MenuItemConstructorOptions[]
        return strict<Electron.Menu>('menu', {})
      },
      setApplicationMenu: () => {},
    }),
    protocol: strict<Electron.Protocol>('protocol', {
      registerSchemesAsPrivileged: schemes => {
        seen.schemes = schemes
      },
      handle: (scheme, handler) => {
        seen.handlers.set(scheme, handler as Handler)
      },
    }),
    screen: strict<Electron.Screen>('screen', {
      getAllDisplays: () => screens.map(workArea => strict<Electron.Display>('display', { workArea })),
    }),
    session: strict<typeof Electron.session>('session', {
      defaultSession: strict<Electron.Session>('defaultSession', {
        setPermissionRequestHandler: handler => {
          seen.request = handler
        },
        setPermissionCheckHandler: handler => {
          seen.check = handler
        },
        setDevicePermissionHandler: handler => {
          seen.device = handler
        },
      }),
    }),
  }
  return { shell, seen, appEvents }
}
