// Read before the rest of the page is laid out: a link to a drawn question gets room for it at once.
if (/[#&]practice=/.test(location.hash)) document.documentElement.classList.add("practice-linked");
