CREATE TABLE "personal" (
	"workshop" text NOT NULL,
	"person" text NOT NULL,
	"reference" text NOT NULL,
	"body" jsonb NOT NULL,
	CONSTRAINT "personal_workshop_reference_pk" PRIMARY KEY("workshop","reference")
);
--> statement-breakpoint
ALTER TABLE "card" ADD COLUMN "changed_seq" integer DEFAULT 0 NOT NULL;--> statement-breakpoint
CREATE INDEX "personal_person" ON "personal" USING btree ("workshop","person");