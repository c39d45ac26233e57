-- The database itself refuses to rewrite the log or the readings, whichever program asks.
-- Only the demo workshop can be removed. Whoever owns the database could drop these triggers; the hash chain shows that.
CREATE FUNCTION "keep_event"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP = 'DELETE' THEN
    IF OLD.workshop = 'demo' THEN RETURN OLD; END IF;
    RAISE EXCEPTION 'events are never deleted: % seq %', OLD.instrument, OLD.seq;
  END IF;
  IF to_jsonb(NEW) - 'undone_by' IS DISTINCT FROM to_jsonb(OLD) - 'undone_by' THEN
    RAISE EXCEPTION 'events are never changed: % seq %', OLD.instrument, OLD.seq;
  END IF;
  RETURN NEW;
END $$;
--> statement-breakpoint
CREATE FUNCTION "keep_reading"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP = 'DELETE' THEN
    IF OLD.workshop = 'demo' THEN RETURN OLD; END IF;
    RAISE EXCEPTION 'readings are never deleted: % at %', OLD.instrument, OLD.place;
  END IF;
  IF to_jsonb(NEW) - ARRAY['standing', 'withdrawn', 'superseded_by'] IS DISTINCT FROM to_jsonb(OLD) - ARRAY['standing', 'withdrawn', 'superseded_by'] THEN
    RAISE EXCEPTION 'readings are never overwritten: % at %', OLD.instrument, OLD.place;
  END IF;
  RETURN NEW;
END $$;
--> statement-breakpoint
CREATE FUNCTION "keep_table"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'table % is never emptied', TG_TABLE_NAME;
END $$;
--> statement-breakpoint
CREATE TRIGGER "event_kept" BEFORE UPDATE OR DELETE ON "event" FOR EACH ROW EXECUTE FUNCTION "keep_event"();
--> statement-breakpoint
CREATE TRIGGER "event_not_emptied" BEFORE TRUNCATE ON "event" FOR EACH STATEMENT EXECUTE FUNCTION "keep_table"();
--> statement-breakpoint
CREATE TRIGGER "reading_kept" BEFORE UPDATE OR DELETE ON "reading" FOR EACH ROW EXECUTE FUNCTION "keep_reading"();
--> statement-breakpoint
CREATE TRIGGER "reading_not_emptied" BEFORE TRUNCATE ON "reading" FOR EACH STATEMENT EXECUTE FUNCTION "keep_table"();
