import { mount } from 'svelte';
import App from './App.svelte';
import './look/look.css';

const target = document.getElementById('page')!;

// a screen in the hall shows the floor alone
if (location.pathname === '/hall')
  void import('./hall/HallPage.svelte').then((hall) => mount(hall.default, { target }));
else mount(App, { target });

// installable, and there again without the program; only where the browser trusts the address (this machine, not the hall's network)
if ('serviceWorker' in navigator && import.meta.env.PROD)
  void navigator.serviceWorker.register('/sw.js').catch(() => {});
