import '@fontsource/atkinson-hyperlegible-next/400.css';
import '@fontsource/atkinson-hyperlegible-next/600.css';
import '@fontsource/atkinson-hyperlegible-next/700.css';
import '../styles/tokens.css';
import '../styles/base.css';
import '../styles/controls.css';
import '../styles/overlays.css';
import '../styles/import.css';
import '../styles/shell.css';
import '../styles/welcome.css';
import '../styles/lists.css';
import '../styles/map.css';
import '../styles/backdrop.css';
import '../styles/passes.css';
import '../styles/draw.css';
import '../styles/print.css';
import '../styles/ribbon.css';
import '../styles/records.css';
import '../styles/rooms.css';
import '../styles/fleets.css';
import '../styles/calendar.css';
import '../styles/season.css';
import '../styles/board.css';
import '../styles/shed.css';
import '../styles/field-work.css';
import '../styles/roads.css';
import '../styles/when.css';
import '../styles/tour.css';
import '../styles/contrast.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app.tsx';

const root = document.getElementById('root');
if (root !== null) {
  createRoot(root).render(
    <StrictMode>
      <App />
    </StrictMode>,
  );
}
