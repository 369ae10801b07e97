-- Every change of a collection gets a number that no other change ever had: a collection that is deleted and made anew has
-- no entity tag of the former one.
create sequence collection_revision as bigint;

-- As every number so far was counted within its collection, all later ones are beyond the greatest.
select setval('collection_revision', coalesce((select max(revision) from collection), 0) + 1, false);
