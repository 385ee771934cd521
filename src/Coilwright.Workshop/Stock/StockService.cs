using Coilwright.Physics;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes.Reading;

namespace Coilwright.Workshop.Stock;

/// <summary>
/// The shop's wire: spools come in, are measured and weighed, and are used up by coils. Use is never typed: it follows from the coils wound
/// or scrapped.
/// </summary>
public sealed class StockService(IShopRecords records, TimeProvider clock, BatchDossiers dossiers)
{
    /// <summary>95 % doubt of a workshop scale, kg, and of a supplier's mass, as a part of it. Common practice, no source.</summary>
    private const double ScaleKg = 1e-3,
        SupplierFraction = 0.01;

    /// <summary>95 % doubt of the forecast length of a coil booked, as a part of it. Our assumption.</summary>
    private const double BookedFraction = 0.01;

    internal static readonly Limits Mass = new(QuantityKind.Mass, 1e-4, 100, "g", "2270 g");
    internal static readonly Limits Length = new(QuantityKind.Length, 0.2, 500, "m", "10 m");
    internal static readonly Limits Ohm = new(QuantityKind.Resistance, 0.05, 1e5, "Ω", "56.2 Ω");

    /// <summary>Takes a spool in, or gives every problem.</summary>
    /// <param name="spool">The spool; its gauge as typed.</param>
    /// <param name="received">Net mass as typed; empty when not stated.</param>
    /// <param name="tare">Mass of the empty spool as typed; empty when not known.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<IReadOnlyList<Problem>> TakeInAsync(SpoolRecord spool, string received, string tare, CancellationToken cancel)
    {
        List<Problem> problems = [];
        spool = spool with
        {
            Insulation = KeyLabels.KeyOf(spool.Insulation, Catalogue.Insulations),
            Build = KeyLabels.KeyOf(spool.Build, Catalogue.Builds),
        };
        if (spool.Label.Trim().Length is 0 or > 40)
        {
            problems.Add(new Problem("label", "a spool needs a label", spool.Label, "1 to 40 letters"));
        }

        WireSize? size = WireCatalogue.Standard.Find(spool.Gauge);
        if (size is null || !WireCatalogue.Standard.TryModelFor(spool.Gauge, spool.Build, spool.Insulation, out _, out string? why))
        {
            problems.Add(
                new Problem(
                    "gauge",
                    size is null ? "this gauge is in no table" : WhyNot(spool),
                    spool.Gauge,
                    string.Join(", ", WireCatalogue.Standard.NearestSizes(spool.Gauge))
                )
            );
        }

        SpoolRecord kept = spool with
        {
            Label = spool.Label.Trim(),
            Gauge = size?.Gauge ?? spool.Gauge,
            ReceivedKg = Optional("received", received, Mass, problems),
            TareKg = Optional("tare", tare, Mass, problems),
            TimeUtc = clock.GetUtcNow(),
        };
        if (problems.Count == 0 && !await records.Stock.AddSpoolAsync(kept, cancel).ConfigureAwait(false))
        {
            problems.Add(new Problem("label", "another spool has this label already", kept.Label, "a label of its own"));
        }

        return problems;
    }

    /// <summary>Records a measured length of a spool, or gives every problem.</summary>
    public async Task<IReadOnlyList<Problem>> MeasureAsync(
        Guid id,
        string label,
        string length,
        string ohms,
        string temperature,
        string person,
        CancellationToken cancel
    )
    {
        List<Problem> problems = [];
        SpoolRecord? spool = await FindAsync(label, problems, cancel).ConfigureAwait(false);
        double? lengthM = Required("length", length, Length, problems),
            ohm = Required("resistance", ohms, Ohm, problems);
        double? temperatureC = Optional("temperature", temperature, PossibleReading.Temperature, problems);
        if (spool is not null && lengthM is { } metres && ohm is { } read && read / metres is < 0.05 or > 250)
        {
            problems.Add(new Problem("resistance", "too high or low for winding wire; check length and range", null, "0.05 to 250 Ω/m"));
        }

        return problems.Count > 0
            ? problems
            : await AddAsync(
                    new SpoolReadingRecord
                    {
                        Id = id,
                        SpoolId = spool!.Id,
                        Kind = SpoolReadingKind.Measured,
                        Typed = $"{length.Trim()}; {ohms.Trim()}; {temperature.Trim()}",
                        LengthM = lengthM,
                        Ohm = ohm,
                        TemperatureC = temperatureC,
                        Person = person.Trim(),
                        TimeUtc = clock.GetUtcNow(),
                    },
                    cancel
                )
                .ConfigureAwait(false);
    }

    /// <summary>Records the mass of a spool with its wire, or gives every problem.</summary>
    public async Task<IReadOnlyList<Problem>> WeighAsync(Guid id, string label, string gross, string person, CancellationToken cancel)
    {
        List<Problem> problems = [];
        SpoolRecord? spool = await FindAsync(label, problems, cancel).ConfigureAwait(false);
        double? grossKg = Required("gross", gross, Mass, problems);
        if (spool is { TareKg: { } tareKg } && grossKg < tareKg)
        {
            problems.Add(
                new Problem("gross", "lighter than the empty spool", gross, $"{QuantityParser.Format(tareKg, QuantityKind.Mass)} or more")
            );
        }

        return problems.Count > 0
            ? problems
            : await AddAsync(
                    new SpoolReadingRecord
                    {
                        Id = id,
                        SpoolId = spool!.Id,
                        Kind = SpoolReadingKind.Weighed,
                        Typed = gross,
                        GrossKg = grossKg,
                        Person = person.Trim(),
                        TimeUtc = clock.GetUtcNow(),
                    },
                    cancel
                )
                .ConfigureAwait(false);
    }

    /// <summary>Every spool as it stands, in order of entry; coils of a batch that took the same from it are one use.</summary>
    public async Task<IReadOnlyList<SpoolStatus>> ShelfAsync(CancellationToken cancel) =>
        await StandAsync(null, coilByCoil: false, cancel).ConfigureAwait(false);

    /// <summary>Some spools as they stand, in order of entry; none of the others' coils are read.</summary>
    /// <param name="labels">Labels, without regard to case; empty ones mean none.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<IReadOnlyList<SpoolStatus>> ShelfAsync(IEnumerable<string> labels, CancellationToken cancel) =>
        await StandAsync(new HashSet<string>(labels, StringComparer.OrdinalIgnoreCase), coilByCoil: true, cancel).ConfigureAwait(false);

    /// <summary>Every spool as it stands with each of its coils: it reads all that was ever wound.</summary>
    public async Task<IReadOnlyList<SpoolStatus>> ShelfByCoilAsync(CancellationToken cancel) =>
        await StandAsync(null, coilByCoil: true, cancel).ConfigureAwait(false);

    /// <summary>One spool by its label with each of its coils; null when there is none.</summary>
    public async Task<SpoolStatus?> StatusAsync(string label, CancellationToken cancel) =>
        await ShelfAsync([label.Trim()], cancel).ConfigureAwait(false) is [var spool, ..] ? spool : null;

    private async Task<IReadOnlyList<SpoolStatus>> StandAsync(HashSet<string>? labels, bool coilByCoil, CancellationToken cancel)
    {
        ILookup<Guid, SpoolReadingRecord> readings = (await records.Stock.SpoolReadingsAsync(cancel).ConfigureAwait(false)).ToLookup(
            reading => reading.SpoolId
        );
        SpoolRecord[] spools =
        [
            .. (await records.Stock.SpoolsAsync(cancel).ConfigureAwait(false)).Where(spool => labels?.Contains(spool.Label) ?? true),
        ];
        Dictionary<string, DateTimeOffset> weighedUtc = new(StringComparer.OrdinalIgnoreCase);
        foreach (SpoolRecord spool in spools)
        {
            weighedUtc[spool.Label] = LastOf(readings[spool.Id], SpoolReadingKind.Weighed)?.TimeUtc ?? DateTimeOffset.MinValue;
        }

        Dictionary<string, DateTimeOffset>? together = coilByCoil ? null : weighedUtc;
        SpoolUses uses = await (
            labels is null
                ? SpoolUses.OfAllAsync(records, dossiers, together, cancel)
                : SpoolUses.OfAsync(records, dossiers, spools.Select(spool => spool.Label), cancel)
        ).ConfigureAwait(false);
        return
        [
            .. spools.Select(spool =>
                WithoutBatches(Stand(spool, [.. readings[spool.Id]], uses.Of(spool.Label)), uses.UnreadOf(spool.Label))
            ),
        ];
    }

    private static SpoolReadingRecord? LastOf(IEnumerable<SpoolReadingRecord> readings, SpoolReadingKind kind) =>
        readings.LastOrDefault(reading => reading.Kind == kind);

    private static SpoolStatus WithoutBatches(SpoolStatus spool, string[] batches) =>
        batches.Length == 0
            ? spool
            : spool with
            {
                RemainingWords =
                    $"{spool.RemainingWords}; the coils of {string.Join(", ", batches)} are not taken off, since that batch cannot "
                    + $"be shown: weigh the spool",
            };

    private static string WhyNot(SpoolRecord spool)
    {
        WireCatalogue.Standard.TryModelFor(spool.Gauge, spool.Build, spool.Insulation, out _, out string? why);
        return why ?? "";
    }

    private static SpoolStatus Stand(SpoolRecord spool, SpoolReadingRecord[] readings, SpoolUse[] uses)
    {
        WireSize size = WireCatalogue.Standard.Find(spool.Gauge)
            ?? throw new InvalidOperationException($"Spool {spool.Label} is of a gauge that is in no table.");
        SpoolReadingRecord? weighed = LastOf(readings, SpoolReadingKind.Weighed);
        SpoolMeasure? measure = SpoolMeasure.Of(size, readings);
        Estimate mass = MassOf(spool, size, measure);
        (Estimate? left, string words) = Left(spool, weighed, mass, uses);
        return new SpoolStatus
        {
            Spool = spool,
            Measure = measure,
            MassKgPerM = mass,
            RemainingM = left,
            RemainingWords = words,
            Uses = uses,
        };
    }

    /// <summary>
    /// Mass of a metre: copper by the measured diameter, else by the table's; enamel by the table's overall diameter. Both ends move
    /// together, which is careful.
    /// </summary>
    private static Estimate MassOf(SpoolRecord spool, WireSize size, SpoolMeasure? measure)
    {
        WireModel wire = WireCatalogue.Standard.ModelFor(spool.Gauge, spool.Build, spool.Insulation);
        double enamel = WireCatalogue.Standard.FindInsulation(spool.Insulation)?.DensityKgPerM3 ?? CopperWire.TypicalEnamelDensityKgPerM3;
        Estimate bare = measure?.BareDiameterM ?? wire.BareDiameterM,
            overall = wire.OverallDiameterM;
        double filmM = overall.Value - size.Bare.NominalM,
            thinM = Math.Max(0, overall.Low - size.Bare.NominalM),
            thickM = overall.High - size.Bare.NominalM;
        return new Estimate(
            CopperWire.MassKgPerM(bare.Value, bare.Value + filmM, enamel),
            CopperWire.MassKgPerM(bare.Low, bare.Low + thinM, enamel),
            CopperWire.MassKgPerM(bare.High, bare.High + thickM, enamel),
            measure is null ? Basis.Assumed : Basis.Measured
        );
    }

    private static (Estimate? Left, string Words) Left(SpoolRecord spool, SpoolReadingRecord? weighed, Estimate mass, SpoolUse[] uses)
    {
        if (weighed is { GrossKg: { } grossKg } && spool.TareKg is { } tareKg)
        {
            double netKg = Math.Max(0, grossKg - tareKg),
                sinceM = uses.Where(use => use.TimeUtc > weighed.TimeUtc).Sum(use => use.WireM);
            double doubtKg = ScaleKg * Math.Sqrt(2);
            return (Less(netKg, doubtKg, mass, sinceM), sinceM > 0 ? "weighed, less the coils since" : "weighed");
        }

        if (spool.ReceivedKg is { } receivedKg)
        {
            double usedM = uses.Sum(use => use.WireM);
            return (Less(receivedKg, receivedKg * SupplierFraction, mass, usedM), "mass received, less the coils booked");
        }

        return (null, weighed is null ? "neither weighed nor received with a mass" : "weighed, but the empty spool's mass is not known");
    }

    private static Estimate Less(double netKg, double doubtKg, Estimate mass, double usedM)
    {
        double leftM = netKg / mass.Value - usedM,
            bookedM = BookedFraction * usedM;
        double down = Math.Sqrt(Square(netKg / mass.Value - netKg / mass.High) + Square(doubtKg / mass.Value) + Square(bookedM)),
            up = Math.Sqrt(Square(netKg / mass.Low - netKg / mass.Value) + Square(doubtKg / mass.Value) + Square(bookedM));
        return new Estimate(Math.Max(0, leftM), Math.Max(0, leftM - down), Math.Max(0, leftM + up), Basis.Measured);
    }

    private async Task<SpoolRecord?> FindAsync(string label, List<Problem> problems, CancellationToken cancel)
    {
        IReadOnlyList<SpoolRecord> all = await records.Stock.SpoolsAsync(cancel).ConfigureAwait(false);
        SpoolRecord? found = all.FirstOrDefault(spool => string.Equals(spool.Label, label.Trim(), StringComparison.OrdinalIgnoreCase));
        if (found is null)
        {
            problems.Add(
                new Problem(
                    "spool",
                    "there is no such spool",
                    label,
                    string.Join(", ", all.Take(20).Select(spool => spool.Label)) is { Length: > 0 } names ? names : "none yet"
                )
            );
        }

        return found;
    }

    private async Task<IReadOnlyList<Problem>> AddAsync(SpoolReadingRecord reading, CancellationToken cancel)
    {
        await records.Stock.AddSpoolReadingAsync(reading, cancel).ConfigureAwait(false);
        return [];
    }

    private static double? Required(string field, string typed, Limits limits, List<Problem> problems)
    {
        if (string.IsNullOrWhiteSpace(typed))
        {
            problems.Add(new Problem(field, "nothing was entered", null, limits.Range));
            return null;
        }

        return Optional(field, typed, limits, problems);
    }

    private static double? Optional(string field, string typed, Limits limits, List<Problem> problems)
    {
        if (string.IsNullOrWhiteSpace(typed))
        {
            return null;
        }

        if (
            !QuantityParser.TryParse(
                typed,
                limits,
                unitRequired: false,
                out Entered entered,
                out string why,
                limits.Kind == QuantityKind.Mass ? "g" : null
            ) || !limits.Allows(entered.Si)
        )
        {
            problems.Add(new Problem(field, why.Length > 0 ? why : limits.Outside, typed, limits.Range));
            return null;
        }

        return entered.Si;
    }

    private static double Square(double value) => value * value;
}
