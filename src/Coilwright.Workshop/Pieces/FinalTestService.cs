using Coilwright.Analysis.Quantities;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Pieces.Events;
using Coilwright.Workshop.Polarity;
using Coilwright.Workshop.Quantities;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Rules;
using Coilwright.Workshop.Steps;

namespace Coilwright.Workshop.Pieces;

/// <summary>The final test: readings of a whole piece against the golden piece or the recipe, with verdict and cause, kept.</summary>
public sealed class FinalTestService(IShopRecords records, PieceService shelf, TimeProvider clock)
{
    /// <summary>
    /// Tests a piece, or gives every problem and keeps nothing. Holds and the room count as they were when a test told late was made.
    /// </summary>
    public async Task<(IReadOnlyList<Problem> Problems, FinalTestVerdict? Verdict)> TestAsync(
        TestEntry entry,
        CancellationToken cancel,
        LateEntry? told = null
    )
    {
        List<Problem> problems = [];
        DateTimeOffset nowUtc = await shelf.NowUtcAsync(cancel).ConfigureAwait(false);
        ShopRules rules = await shelf.Rules.CurrentAsync(cancel).ConfigureAwait(false);
        PieceSnapshot? life = await shelf.FindOneAsync(entry.Serial, problems, cancel).ConfigureAwait(false);
        DateTimeOffset madeUtc = LateEntry.MadeUtc(told, nowUtc);
        TestReader reader = new(
            entry,
            life?.Piece.Id ?? Guid.Empty,
            (await RoomInForce.AtAsync(records, LateEntry.MadeUtc(told, clock.GetUtcNow()), cancel).ConfigureAwait(false))?.TemperatureC,
            nowUtc
        );
        IReadOnlyList<PieceReadingRecord> readings = reader.Read();
        problems.AddRange(reader.Problems);
        if (life is null)
        {
            return (problems, null);
        }

        bool sentTwice = life.History.All.Any(one => one.Id == entry.Id);
        problems.AddRange(sentTwice ? [] : MayTest(life, madeUtc, rules));
        if (problems.Count > 0)
        {
            return (problems, null);
        }

        IReadOnlyList<PieceReadingRecord> reference = await GoldenAsync(life, cancel).ConfigureAwait(false);
        FinalTestVerdict verdict = Judge(life, readings, entry.Flaws, reference, rules);
        Tested tested = new()
        {
            Id = entry.Id,
            PieceId = life.Piece.Id,
            Passed = verdict.Passes,
            Verdict = verdict.Verdict,
            Outcomes = [.. verdict.Outcomes.Select(Marked)],
            Limits = Asked(life.Recipe, reference, rules).Lines,
            Person = entry.Person.Trim(),
            TimeUtc = nowUtc,
        };
        MadeGolden[] golden = entry.Golden
            ?
            [
                new()
                {
                    Id = ReadingChain.IdWithin(entry.Id, "golden"),
                    PieceId = tested.PieceId,
                    Person = tested.Person,
                    TimeUtc = nowUtc,
                },
            ]
            : [];
        await records.Pieces.AddEventsAsync([tested, .. golden, .. ToldLate.Of([tested], told)], readings, cancel).ConfigureAwait(false);
        return ([], verdict);
    }

    /// <summary>The golden piece's readings for a piece's recipe; none when there is no golden piece, or when this is it.</summary>
    public async Task<IReadOnlyList<PieceReadingRecord>> GoldenAsync(PieceSnapshot life, CancellationToken cancel)
    {
        PieceRecord? golden = await records.Pieces.GoldenAsync(life.Piece.RecipeId, cancel).ConfigureAwait(false);
        if (golden is null || golden.Id == life.Piece.Id)
        {
            return [];
        }

        PieceSnapshot measure = (await shelf.LivesAsync([golden], cancel).ConfigureAwait(false))[0];
        MadeGolden? made = measure.History.InForce.OfType<MadeGolden>().LastOrDefault();
        Tested? test = made is null ? null : measure.History.InForce.OfType<Tested>().LastOrDefault(one => one.TimeUtc <= made.TimeUtc);
        return test is null ? [] : measure.ReadingsOf(test);
    }

    /// <summary>What a piece's newest test asked: as it was kept with its verdict, else by today's rules.</summary>
    public async Task<IReadOnlyList<TestLine>> LimitsAsync(PieceSnapshot life, ShopRules rules, CancellationToken cancel) =>
        life.History.InForce.OfType<Tested>().LastOrDefault() is { Limits: { Count: > 0 } kept }
            ? kept
            : Asked(life.Recipe, await GoldenAsync(life, cancel).ConfigureAwait(false), rules).Lines;

    /// <summary>What the final test asks of a piece.</summary>
    public static FinalTest Asked(Recipe recipe, IReadOnlyList<PieceReadingRecord> golden, ShopRules rules)
    {
        List<TestLine> lines = [];
        foreach ((string quantity, double tolerance) in rules.TestTolerances)
        {
            bool needed = rules.TestNeeds.Contains(quantity);
            if (golden.LastOrDefault(reading => reading.Quantity == quantity && reading.Si is > 0) is { } measure)
            {
                lines.Add(new TestLine(quantity, measure.Comparable(), tolerance, IsGolden: true, needed));
            }
            else if (recipe.Targets.GetValueOrDefault(quantity) is { } target)
            {
                double nominal = target.Nominal.Si * (Quantity.Find(quantity)?.Factor(target) ?? 1);
                lines.Add(new TestLine(quantity, nominal, target.Tolerance, IsGolden: false, needed));
            }
            else if (quantity == QuantityKey.DcResistance && SumOfCoils(recipe) is { } sum)
            {
                lines.Add(new TestLine(quantity, sum.Ohm, sum.Tolerance, IsGolden: false, needed));
            }
        }

        return new FinalTest(lines, Math.Sign(RecipePhase.Of(recipe).Coils.Sum(coil => coil.FirstSwing)));
    }

    /// <summary>Judges readings of a piece.</summary>
    public static FinalTestVerdict Judge(
        PieceSnapshot life,
        IReadOnlyList<PieceReadingRecord> readings,
        string flaws,
        IReadOnlyList<PieceReadingRecord> golden,
        ShopRules rules
    )
    {
        FinalTest asked = Asked(life.Recipe, golden, rules);
        Dictionary<string, double> values = new(StringComparer.Ordinal);
        foreach (PieceReadingRecord reading in readings.Where(reading => reading.Pole is null && SameFrequency(reading, golden)))
        {
            values[reading.Quantity] = reading.Si is null ? double.PositiveInfinity : reading.Comparable();
        }

        PoleReading? gauss = PoleReading.Of(readings);
        if (readings.Any(reading => reading is { Quantity: QuantityKey.DcResistance, Si: null }))
        {
            return Open(flaws);
        }

        FinalTestVerdict verdict = asked.Judge(
            values,
            gauss,
            RecipePoles.NorthUp(life.Recipe),
            values.TryGetValue(QuantityKey.FirstSwing, out double swing) ? Math.Sign(swing) : null,
            flaws,
            rules.GaussSpread,
            ChargeRule.AtTest(life, gauss, rules)
        );
        return asked.Lines.Count > 0 ? verdict : WithoutReference(verdict);
    }

    private static FinalTestVerdict WithoutReference(FinalTestVerdict verdict) =>
        new(
            [
                .. verdict.Outcomes,
                new TestOutcome("reference", TestResult.Missing, "no reference yet: no golden piece, and the recipe states no target"),
            ],
            verdict.Passes || verdict.Verdict == "pass"
                ? "on hold: no reference yet; mark one piece as golden or give the recipe targets"
                : verdict.Verdict,
            false
        );

    private static FinalTestVerdict Open(string flaws)
    {
        List<TestOutcome> outcomes =
        [
            new TestOutcome(QuantityKey.DcResistance, TestResult.Fail, "fail: open, the meter finds no connection"),
        ];
        if (flaws.Trim().Length > 0)
        {
            outcomes.Add(new TestOutcome("looks", TestResult.Fail, "fail: " + flaws.Trim()));
        }

        return new FinalTestVerdict(outcomes, "fail: open: reheat the joints first, then look for a broken lead or wire", false);
    }

    private static IEnumerable<Problem> MayTest(PieceSnapshot life, DateTimeOffset nowUtc, ShopRules rules)
    {
        if (life.NotHere is { } away)
        {
            return [away];
        }

        // A test may be made again after one that failed, or after one that passed.
        StepRun[] before = [.. life.History.Runs.Where(run => run.Step is not PieceEventLog.FinalTest and not PieceEventLog.Packing)];
        return StepRules
            .MayBegin(PieceEventLog.FinalTest, life.Plans, before, life.History.Holds, nowUtc, rules.Zone)
            .Select(problem => problem with { Message = $"{life.Piece.Serial}: {problem.Message}" });
    }

    private static bool SameFrequency(PieceReadingRecord reading, IReadOnlyList<PieceReadingRecord> golden) =>
        golden.LastOrDefault(other => other.Quantity == reading.Quantity)?.AtHz is not { } hz
        || reading.AtHz is not { } at
        || Math.Abs(at - hz) <= 0.02 * hz;

    private static (double Ohm, double Tolerance)? SumOfCoils(Recipe recipe)
    {
        Target?[] targets = [.. recipe.Coils.Select(coil => coil.Targets.GetValueOrDefault(QuantityKey.DcResistance))];
        return targets.Length == 0 || targets.Any(target => target is null) || recipe.Connection == Physics.Connection.Parallel
            ? null
            : (targets.Sum(target => target!.Nominal.Si * Quantity.DcResistance.Factor(target!)), targets.Max(target => target!.Tolerance));
    }

    /// <summary>An outcome that did not pass says so, also where it is read later without the page.</summary>
    private static string Marked(TestOutcome outcome) =>
        outcome.Result == TestResult.Fail && !outcome.Words.StartsWith("fail", StringComparison.Ordinal)
            ? outcome.Words + ", fail"
            : outcome.Words;
}
