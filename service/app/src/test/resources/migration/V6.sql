insert into collection (owner, id, revision, changed_in, document)
select 'nils', 'attic', numbered.next, numbered.next, '{"id":"attic","name":"Attic"}'
from (select nextval('collection_revision') as next) numbered;
