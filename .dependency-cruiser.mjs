export default { forbidden: [], options: { doNotFollow: { path: 'node_modules' }, parser: 'swc' } }
