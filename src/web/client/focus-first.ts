/** What keeps a form from being kept takes the focus as the page comes, so that it is read out first. */
document.querySelector<HTMLElement>("[data-focus-first]")?.focus();
