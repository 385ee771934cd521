using Coilwright.Analysis.Forecasts;
using Coilwright.Analysis.Quantities;
using Coilwright.Papers.Cards;
using Coilwright.Papers.Labels;
using Coilwright.Papers.Parts;
using Coilwright.Papers.Repairs;
using Coilwright.Papers.Sheets;
using Coilwright.Papers.Shipping;
using Coilwright.Papers.Spec;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Materials;
using Coilwright.Workshop.Customers;
using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Parts;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Pieces.Events;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Returns;
using Coilwright.Workshop.Rules;
using Coilwright.Workshop.Sets;
using Coilwright.Workshop.Tracing;

namespace Coilwright.Papers.Pieces;

/// <summary>Every paper of a piece, from what the shop has on record of it.</summary>
public static class PiecePapers
{
    /// <summary>The label: serial, recipe, first options.</summary>
    public static PieceLabel Label(PieceSnapshot life)
    {
        IEnumerable<string> options = life.Piece.Options.Split('\n', StringSplitOptions.RemoveEmptyEntries).Take(2);
        string[] lines = [$"{life.Recipe.Name} {life.Revision.Letter}", .. options];
        return new PieceLabel(life.Piece.Serial, life.Piece.Serial, lines, ChargeRule.HasMagnets(life.Recipe));
    }

    /// <summary>The spec sheet of the piece: what its newest test read, beside the model's forecast.</summary>
    /// <param name="life">The piece.</param>
    /// <param name="prediction">The forecast of its recipe on the load, with curves.</param>
    /// <param name="load">The load.</param>
    /// <param name="ground">Shop, rules, day.</param>
    /// <param name="forHouse">True for the shop's own copy, with how far each reading lies from the recipe.</param>
    public static Sheet Spec(PieceSnapshot life, Prediction prediction, LoadCircuit load, PaperGround ground, bool forHouse = false) =>
        PieceSheet.Of(life.Recipe, prediction, load, Facts(life), ground.Heading(life.Revision.Letter), forHouse: forHouse);

    /// <summary>The paper that travels with the piece, with what is done and what holds it.</summary>
    public static Sheet TravellerOf(PieceSnapshot life, PaperGround ground) =>
        Traveller.Of(
            life.Recipe,
            ground.Heading(life.Revision.Letter),
            new TravellerFacts
            {
                Piece = life.Piece.Serial,
                Steps = life.Plans,
                Runs = life.History.Runs,
                Holds = life.History.Holds,
                Charge = MagnetCharge.Of(life)?.Words ?? "",
                NowUtc = ground.NowUtc,
                Zone = ground.Rules.Zone,
            }
        );

    /// <summary>The wiring sheet, with the shop's own lead colours.</summary>
    public static Sheet WiringOf(Recipe recipe, string revision, PaperGround ground) =>
        WiringSheet.Of(
            recipe,
            ground.Heading(revision),
            new Wiring
            {
                Colours =
                [
                    .. from coil in recipe.Coils
                    from end in (string[])["start", "finish"]
                    let colour = ground.Rules.ColourOf(coil.Name, end)
                    where colour is not null
                    select new LeadColour(coil.Name, end, colour),
                ],
                Ground = ground.Rules.ColourOf("*", "ground") ?? "",
            }
        );

    /// <summary>The parts list of the piece, by its options, with the lots and tags that went in.</summary>
    /// <param name="life">The piece.</param>
    /// <param name="prediction">The forecast of its recipe, for the wire.</param>
    /// <param name="ground">Shop, rules, day.</param>
    public static Sheet PartsOf(PieceSnapshot life, Prediction prediction, PaperGround ground)
    {
        PartsList list = PartsList.Of(life.Recipe, prediction, PartOption.Of(life.Recipe, life.Piece.Options.Split('\n'), []), 1);
        return PartsSheet.Of(
            life.Recipe.Name,
            list,
            ground.Heading(life.Revision.Letter),
            life.Piece.Serial,
            [.. life.PartsIn.Select(part => (part.Place, part.Lot.Length > 0 ? part.Lot : part.Tag))]
        ) with
        {
            OwnFacts = [("Serial", life.Piece.Serial)],
        };
    }

    /// <summary>The certificate of the newest test of each piece; null when one was never tested.</summary>
    /// <param name="subject">Serial, shipment or order.</param>
    /// <param name="pieces">Each with the limits of its test.</param>
    /// <param name="ground">Shop, rules, day.</param>
    public static Sheet? Certificate(
        string subject,
        IReadOnlyList<(PieceSnapshot Snapshot, IReadOnlyList<TestLine> Limits)> pieces,
        PaperGround ground
    )
    {
        if (pieces.Any(one => LastTest(one.Snapshot) is null))
        {
            return null;
        }

        CertifiedPiece[] certified = [.. pieces.Select(one => Certified(one.Snapshot, one.Limits))];
        UsedInstrument[] instruments =
        [
            .. certified
                .SelectMany(piece => piece.Readings)
                .Select(reading => reading.Reading.Instrument)
                .Where(name => name.Length > 0)
                .Distinct()
                .Select(name => new UsedInstrument(name)),
        ];
        return CertificateOfTest.Of(new CertificateContent(subject, certified, instruments), ground.Heading(""), ground.Rules.Zone);
    }

    /// <summary>The packing list of pieces for a customer, with the air-freight question of their magnets.</summary>
    public static Sheet Packing(CustomerRecord customer, IReadOnlyList<PieceSnapshot> pieces, PaperGround ground) =>
        PackingList.Of(
            new PackingContent(
                customer.Reference,
                [
                    .. pieces.Select(life => new PackedPiece(life.Piece.Serial, life.Recipe.Name, life.Revision.Letter)
                    {
                        Set = SetMembership.Of(life) is { } set ? $"{set.Name}, {set.Place}" : "",
                    }),
                ]
            )
            {
                To = customer.Name.Length > 0 ? [customer.Name] : [],
                MagnetMomentAm2 = pieces.Sum(life => MagnetMoment.UpperBoundAm2(RecipeModelBuilder.ToModel(life.Recipe))),
            },
            ground.Heading("")
        );

    /// <summary>The report on a piece that came back; null when it never did.</summary>
    public static Sheet? Repair(TracedPiece piece, PaperGround ground)
    {
        PieceSnapshot life = piece.Snapshot;
        if (life.History.Return is not { } back)
        {
            return null;
        }

        IReadOnlyList<PieceEvent> events = life.History.InForce;
        Examined? examined = events.OfType<Examined>().LastOrDefault();
        ClosingEvent? mended = events.OfType<ClosingEvent>().LastOrDefault(one => one.TimeUtc >= back.TimeUtc);
        Shipped? left = events.OfType<Shipped>().LastOrDefault(one => one.TimeUtc <= back.TimeUtc);
        Tested? test = events.OfType<Tested>().LastOrDefault(one => one.TimeUtc <= (left?.TimeUtc ?? back.TimeUtc));
        Dictionary<string, PieceReading> then = Numbers(life, test).ToDictionary(reading => reading.Quantity),
            now = Numbers(life, examined).ToDictionary(reading => reading.Quantity);
        RepairContent content = new(
            life.Piece.Serial,
            back.Complaint,
            [.. now.Keys.Union(then.Keys).Select(key => new RepairReading(then.GetValueOrDefault(key), now.GetValueOrDefault(key)))],
            ReturnService.LastFinding(life, ground.Rules)?.Cause ?? "not examined yet"
        )
        {
            Recipe = life.Recipe.Name,
            Customer = piece.Customers.Count > 0 ? piece.Customers[^1].Words : "",
            Dispatched = left is null ? null : ground.Day(left.TimeUtc),
            CameBack = ground.Day(back.TimeUtc),
            Done = [.. events.Where(one => one.WorkDone.Length > 0 && one.TimeUtc >= back.TimeUtc).Select(one => one.WorkDone)],
            Cost = mended?.Cost ?? "",
            Answer = mended?.Answer ?? "",
        };
        return RepairReport.Of(content, ground.Heading(life.Revision.Letter));
    }

    private static CertifiedPiece Certified(PieceSnapshot life, IReadOnlyList<TestLine> limits)
    {
        Tested test = LastTest(life)!;
        CertifiedReading[] readings =
        [
            .. Numbers(life, test)
                .Select(reading =>
                    limits.FirstOrDefault(line => line.Quantity == reading.Quantity) is { } line
                        ? new CertifiedReading(reading, line.Reference * (1 - line.Tolerance), line.Reference * (1 + line.Tolerance))
                        : new CertifiedReading(reading)
                ),
        ];
        return new CertifiedPiece(
            life.Piece.Serial,
            life.Recipe.Name,
            life.Revision.Letter,
            readings,
            test.Passed,
            test.Verdict,
            test.Person.Length > 0 ? test.Person : "not written down",
            test.TimeUtc
        )
        {
            Charge = MagnetCharge.Told(life),
        };
    }

    private static PieceFacts Facts(PieceSnapshot life)
    {
        Tested? test = LastTest(life);
        PieceReadingRecord[] all = test is null ? [] : [.. life.ReadingsOf(test)];
        PieceReadingRecord[] poles = [.. all.Where(reading => reading is { Pole: not null, Si: not null })];
        return new PieceFacts(life.Piece.Serial, Numbers(life, test))
        {
            Charge = MagnetCharge.Told(life),
            Set = SetMembership.Of(life) is { } set ? $"{set.Name}, {set.Place}" : "",
            Poles =
                poles.Length == 0
                    ? null
                    : new PoleReading([.. poles.Select(pole => pole.Si!.Value)], poles[0].DistanceM ?? 0, poles[0].Instrument),
            FirstSwing = all.FirstOrDefault(reading => reading.Quantity == QuantityKey.FirstSwing)?.Si is { } swing
                ? Math.Sign(swing)
                : null,
        };
    }

    private static Tested? LastTest(PieceSnapshot life) => life.History.InForce.OfType<Tested>().LastOrDefault();

    private static IReadOnlyList<PieceReading> Numbers(PieceSnapshot life, PieceEvent? happened) =>
        happened is null
            ? []
            :
            [
                .. life.ReadingsOf(happened)
                    .Where(reading => reading.Pole is null && reading.Quantity != QuantityKey.FirstSwing)
                    .Select(reading => new PieceReading(reading.Quantity, reading.Si ?? double.NaN)
                    {
                        TemperatureC = reading.TemperatureC,
                        AtHz = reading.AtHz,
                        Instrument = reading.Instrument,
                        Flag = reading.Si is null ? "open" : "",
                    }),
            ];
}
