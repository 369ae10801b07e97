-- A catalogue with a history: an item that was changed, one that was deleted, one that was imported with others.
update catalogue_state set revision = 4;
insert into catalogue_item (kind, id, revision, name, document, price_least, price_greatest, currency) values
    ('LINK', 'old-lead', 3, 'An old lead',
     '{"id":"old-lead","kind":"CABLE","name":"An old lead","from":{"connector":"MINI_DIN_4"},"to":{"connector":"MINI_DIN_4"},"carries":[{"format":"YC"}],"price":{"amount":"4.50","currency":"EUR"}}',
     4.50, 4.50, 'EUR'),
    ('LINK', 'other-lead', 1, 'Another',
     '{"id":"other-lead","kind":"CABLE","name":"Another","from":{"connector":"MINI_DIN_4"},"to":{"connector":"MINI_DIN_4"},"carries":[{"format":"YC"}]}',
     null, null, null);
insert into catalogue_capability (kind, id, connector, format, line_rate_least, line_rate_greatest) values
    ('LINK', 'old-lead', 'MINI_DIN_4', 'YC', null, null),
    ('LINK', 'other-lead', 'MINI_DIN_4', 'YC', null, null);
insert into catalogue_revision (kind, id, revision, document, change, changed_at, changed_by) values
    ('LINK', 'old-lead', 1,
     '{"id":"old-lead","kind":"CABLE","name":"A lead","from":{"connector":"MINI_DIN_4"},"to":{"connector":"MINI_DIN_4"},"carries":[{"format":"YC"}]}',
     'IMPORTED', '2026-01-02T03:04:05Z', 'local'),
    ('LINK', 'other-lead', 1,
     '{"id":"other-lead","kind":"CABLE","name":"Another","from":{"connector":"MINI_DIN_4"},"to":{"connector":"MINI_DIN_4"},"carries":[{"format":"YC"}]}',
     'IMPORTED', '2026-01-02T03:04:05Z', 'local'),
    ('LINK', 'gone-lead', 2,
     '{"id":"gone-lead","kind":"CABLE","name":"Gone","from":{"connector":"MINI_DIN_4"},"to":{"connector":"MINI_DIN_4"},"carries":[{"format":"YC"}]}',
     'CREATED', '2026-01-02T03:05:05Z', 'local'),
    ('LINK', 'old-lead', 3,
     '{"id":"old-lead","kind":"CABLE","name":"An old lead","from":{"connector":"MINI_DIN_4"},"to":{"connector":"MINI_DIN_4"},"carries":[{"format":"YC"}],"price":{"amount":"4.50","currency":"EUR"}}',
     'REPLACED', '2026-01-02T03:06:05Z', 'local'),
    ('LINK', 'gone-lead', 4, null, 'DELETED', '2026-01-02T03:07:05Z', 'local');
