using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Coilwright.Storage.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class TypedEvents : Migration
    {
        /// <summary>What magnets were charged to, from the value "r" that stood among the readings. A number is kept to its last bit.</summary>
        private const string Charge = """
            json_object(
              'level', json(CASE r.Quantity
                WHEN 'charge' THEN json_object('share', json(quote(r.Si)))
                ELSE json_object('fieldT', json(quote(r.Si)), 'jigM', json(CASE WHEN r.DistanceM IS NULL THEN 'null' ELSE quote(r.DistanceM) END))
              END),
              'typed', r.Typed,
              'charger', r.Instrument)
            """;

        private const string ChargeOfThis = """
            FROM PieceReadings r
            WHERE r.EventId = PieceEvents.Id AND r.Quantity IN ('charge', 'chargeField') AND r.Si IS NOT NULL
            ORDER BY r.EntryOrder DESC LIMIT 1
            """;

        /// <summary>Every kind's own words, from the columns and lines of text that the events of pieces shared.</summary>
        private const string OfPieces = $"""
            UPDATE PieceEvents SET Payload = CASE Kind
              WHEN 'StepBegun' THEN json_object('step', Step)
              WHEN 'StepEnded' THEN coalesce(
                (SELECT json_object('step', PieceEvents.Step, 'charge', {Charge}) {ChargeOfThis}),
                json_object('step', Step))
              WHEN 'Charged' THEN coalesce(
                (SELECT json_object('charge', {Charge}, 'why', PieceEvents.Words) {ChargeOfThis}),
                json_object('charge', json_object('level', json_object(), 'typed', '', 'charger', ''), 'why', Words))
              WHEN 'Held' THEN json_object('reason', Words)
              WHEN 'Lifted' THEN json_object('reason', Words)
              WHEN 'Tested' THEN json_object(
                'passed', json(CASE Passed WHEN 1 THEN 'true' ELSE 'false' END),
                'verdict', iif(instr(Words, ' — ') > 0, substr(Words, 1, instr(Words, ' — ') - 1), Words),
                'outcomes', json(iif(
                  instr(Words, ' — ') > 0,
                  '[' || replace(json_quote(substr(Words, instr(Words, ' — ') + 3)), '; ', '","') || ']',
                  '[]')))
              WHEN 'Returned' THEN json_object('complaint', Words)
              WHEN 'Examined' THEN iif(
                instr(Words, '; seen: ') > 0,
                json_object(
                  'finding', substr(Words, 1, instr(Words, '; seen: ') - 1),
                  'flaws', substr(Words, instr(Words, '; seen: ') + 8)),
                json_object('finding', Words))
              WHEN 'PartOut' THEN (
                SELECT json_object(
                  'outTag', Tag,
                  'inTag', substr(Rest, 1, instr(Rest, ' in: ') - 1),
                  'reason', substr(Rest, instr(Rest, ' in: ') + 5))
                FROM (
                  SELECT part.Tag, substr(PieceEvents.Words, length(part.Tag) + length(' out, ') + 1) AS Rest
                  FROM PieceParts part WHERE part.Id = PieceEvents.About))
              WHEN 'Repaired' THEN json_object('done', Words, 'cost', Cost, 'answer', Answer)
              WHEN 'Scrapped' THEN json_object('reason', Words, 'cost', Cost, 'answer', Answer)
              WHEN 'JoinedSet' THEN json_object(
                'name', iif(instr(Words, char(10)) > 0, substr(Words, 1, instr(Words, char(10)) - 1), Words),
                'place', Step,
                'offsetDb', json(coalesce(
                  (SELECT quote(r.Si) FROM PieceReadings r
                    WHERE r.EventId = PieceEvents.Id AND r.Quantity = 'setOffset' AND r.Si IS NOT NULL ORDER BY r.EntryOrder DESC LIMIT 1),
                  '0')),
                'offsetTyped',
                  (SELECT r.Typed FROM PieceReadings r
                    WHERE r.EventId = PieceEvents.Id AND r.Quantity = 'setOffset' ORDER BY r.EntryOrder DESC LIMIT 1),
                'why', iif(instr(Words, char(10)) > 0, substr(Words, instr(Words, char(10)) + 1), ''))
              WHEN 'LeftSet' THEN (
                SELECT json_object('name', Name, 'reason', substr(PieceEvents.Words, length('out of set ' || Name || ': ') + 1))
                FROM (
                  SELECT iif(instr(joined.Words, char(10)) > 0, substr(joined.Words, 1, instr(joined.Words, char(10)) - 1), joined.Words) AS Name
                  FROM PieceEvents joined WHERE joined.Kind = 'JoinedSet' AND joined.About = PieceEvents.About LIMIT 1))
              WHEN 'Noted' THEN json_object('text', Words)
              WHEN 'Undone' THEN json_object('reason', Words)
              WHEN 'ToldLate' THEN json_object(
                'saidUtc', substr(Words, 1, instr(Words, '/') - 1),
                'sentUtc', substr(Words, instr(Words, '/') + 1))
              WHEN 'TimeMended' THEN json_object(
                'rightUtc', substr(Words, 1, instr(Words, char(10)) - 1),
                'reason', substr(Words, instr(Words, char(10)) + 1))
              ELSE json_object()
            END;
            """;

        private const string AtWinder = "'machine', Machine, 'note', Note";

        private const string Turns = "'turns', json(CASE WHEN Turns IS NULL THEN 'null' ELSE quote(Turns) END)";

        /// <summary>The same for the events of batches.</summary>
        private const string OfBatches = $"""
            UPDATE BatchEvents SET Payload = CASE Kind
              WHEN 'Begun' THEN json_object({AtWinder})
              WHEN 'Released' THEN json_object({AtWinder})
              WHEN 'SpoolTaken' THEN json_object('choice', Choice, {Turns}, {AtWinder})
              WHEN 'MoreWanted' THEN json_object('coils', CAST(coalesce(Counter, 0) AS INTEGER), 'why', Note)
              WHEN 'Undone' THEN json_object()
              ELSE json_object('counter', json(CASE WHEN Counter IS NULL THEN 'null' ELSE quote(Counter) END), {Turns}, {AtWinder})
            END;
            """;

        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            foreach (string table in new[] { "BatchEvents", "PieceEvents", "PieceReadings" })
            {
                migrationBuilder.Sql($"DROP TRIGGER {table}_no_update;");
                migrationBuilder.Sql($"DROP TRIGGER {table}_no_delete;");
            }

            migrationBuilder.Sql("ALTER TABLE PieceEvents ADD COLUMN Payload TEXT NOT NULL DEFAULT '';");
            migrationBuilder.Sql(OfPieces);
            migrationBuilder.Sql(
                "DELETE FROM PieceReadings WHERE Quantity IN ('charge', 'chargeField', 'setOffset') "
                    + "AND EventId IN (SELECT Id FROM PieceEvents WHERE Kind IN ('StepEnded', 'Charged', 'JoinedSet'));"
            );
            migrationBuilder.Sql("ALTER TABLE BatchEvents ADD COLUMN Payload TEXT NOT NULL DEFAULT '';");
            migrationBuilder.Sql(OfBatches);
            foreach (string column in new[] { "Counter", "Turns", "Choice", "Machine", "Note" })
            {
                migrationBuilder.Sql($"ALTER TABLE BatchEvents DROP COLUMN {column};");
            }

            foreach (string column in new[] { "Step", "Passed", "Words", "Cost", "Answer" })
            {
                migrationBuilder.Sql($"ALTER TABLE PieceEvents DROP COLUMN {column};");
            }

            foreach (string rule in RecordsOnlyGrow.TypedEventRules)
            {
                migrationBuilder.Sql(rule);
            }

            migrationBuilder.Sql("PRAGMA user_version = 8;");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder) =>
            throw new System.NotSupportedException("Typed events are not written back as lines of text.");
    }
}
