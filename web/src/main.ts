import { mount } from 'svelte';
import App from './App.svelte';
import './look/look.css';

mount(App, { target: document.getElementById('page')! });

// installable, and there again without the program; only where the browser trusts the address (this machine, not the hall's network)
if ('serviceWorker' in navigator && import.meta.env.PROD)
  void navigator.serviceWorker.register('/sw.js').catch(() => {});
