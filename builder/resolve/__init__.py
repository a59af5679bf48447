"""From declared rows to placed cells: finds every fault at once, knows no file format."""
