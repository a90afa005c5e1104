import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { App } from './app.tsx'
import { keepFocus } from './keep-focus.ts'
import { keepPages } from './offline/register.ts'
import { applyTheme, storedTheme } from './theme.ts'
import './style/tokens.css'
import './style/base.css'
import './style/controls.css'
import './style/bench.css'
import './style/machine.css'
import './style/move.css'
import './style/drawing.css'

applyTheme(storedTheme())
keepPages()
keepFocus()
const place = document.getElementById('page')
if (place === null) throw new Error('The page has no element with the id "page"')
createRoot(place).render(
  <StrictMode>
    <App />
  </StrictMode>,
)
