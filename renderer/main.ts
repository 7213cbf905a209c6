import './styles/fonts.css';
import './styles/tokens.css';
import './styles/page.css';
import { mount } from 'svelte';
import App from './App.svelte';
import { pickClient } from './state/client.ts';

mount(App, { target: document.getElementById('page')!, props: { client: pickClient(window) } });
