/**
 * Where the page begins: the styles, and the app put into the document.
 */
import "@fontsource-variable/atkinson-hyperlegible-next/index.css";
import "./styles/tokens.css";
import "./styles/base.css";
import "./styles/print.css";
import { mount } from "svelte";
import App from "./App.svelte";

const target = document.getElementById("app");
if (target === null) throw new Error("index.html has no #app element");

mount(App, { target });
