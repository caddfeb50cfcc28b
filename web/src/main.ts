import { mount } from 'svelte';
import App from './App.svelte';
import './look/look.css';

mount(App, { target: document.getElementById('page')! });
