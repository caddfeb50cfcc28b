import { mount } from 'svelte';
import type { StudentPage as Page } from '../lib/contract';
import '../look/look.css';
import StudentPage from './StudentPage.svelte';

// what the program has put into this very file
const page = JSON.parse(document.getElementById('dance')!.textContent) as Page;
mount(StudentPage, { target: document.getElementById('page')!, props: { page } });
