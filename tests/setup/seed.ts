import fc from 'fast-check'

// One fixed seed, so that a red run can be repeated; a fresh one may be given to look for new counter-examples.
fc.configureGlobal({ seed: Number(process.env.FC_SEED ?? 20260415) })
