insert into collection (owner, id, revision, changed_in, document) values
    ('mira', 'den', 3, 1, '{"id":"den","name":"Den"}');
insert into collection_record (owner, collection, section, id, revision, document) values
    ('mira', 'den', 'ITEMS', 'set', 2, '{"id":"set","kind":"DISPLAY","catalogueId":"lowick-40"}'),
    ('mira', 'den', 'ITEMS', 'box', 2, '{"id":"box","kind":"CONVERTER","catalogueId":"tarn-b"}'),
    ('mira', 'den', 'CONNECTIONS', 'box-set', 3,
     '{"id":"box-set","from":{"item":"box","port":"out"},"to":{"item":"set","port":"digital-1"}}');
insert into collection_port (owner, collection, item, port, connection) values
    ('mira', 'den', 'box', 'out', 'box-set'),
    ('mira', 'den', 'set', 'digital-1', 'box-set');
