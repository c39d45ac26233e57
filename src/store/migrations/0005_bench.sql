ALTER TABLE "chain_head" ADD COLUMN "at" timestamp (3) with time zone;--> statement-breakpoint
CREATE INDEX "card_entity" ON "card" USING btree ("entity","place");--> statement-breakpoint
CREATE INDEX "card_work_to_do" ON "card" USING btree (("body"->>'status'),("body"->>'doneAt')) WHERE "card"."entity" = 'work' and "card"."standing";--> statement-breakpoint
CREATE INDEX "chain_head_latest" ON "chain_head" USING btree ("at" DESC NULLS LAST,"instrument");--> statement-breakpoint
CREATE INDEX "reading_count" ON "reading" USING btree ("instrument","cycle","state") WHERE "reading"."standing";--> statement-breakpoint
UPDATE "chain_head" SET "at" = "event"."at" FROM "event" WHERE "event"."workshop" = "chain_head"."workshop" AND "event"."instrument" = "chain_head"."instrument" AND "event"."seq" = "chain_head"."seq";
