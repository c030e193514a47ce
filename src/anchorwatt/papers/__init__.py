"""What an assessment says, page by page: one content for the terminal, the browser, spreadsheets and plain data."""
