using Coilwright.Analysis.Learning;
using Coilwright.Analysis.Quantities;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Batches.Events;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Quantities;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Stock;

namespace Coilwright.Workshop.Learning;

/// <summary>The coils of a shop set against their plain forecasts, each with where it came from.</summary>
/// <param name="Resistance">Readings of DC resistance.</param>
/// <param name="Inductance">Readings of inductance.</param>
/// <param name="Wire">Measured lengths of spools.</param>
/// <param name="Lines">Lines of bobbins and lots, in the order in which they were first wound.</param>
/// <param name="WithoutTemperature">How many coils are left out since nobody knows how warm they were.</param>
/// <param name="Read">Every coil whose resistance could be compared.</param>
/// <param name="Unreadable">Batches that could not be read.</param>
internal sealed record GatheredCoils(
    IReadOnlyList<LearningReading> Resistance,
    IReadOnlyList<LearningReading> Inductance,
    IReadOnlyList<LearningCell> Wire,
    IReadOnlyList<LineOfCoils> Lines,
    int WithoutTemperature,
    IReadOnlyList<CoilRead> Read,
    IReadOnlyList<UnreadableRecord> Unreadable
);

/// <summary>Gathers the coils of a shop.</summary>
internal sealed class LearningGather(IShopRecords records)
{
    /// <summary>Farther off than this factor is no coil of this recipe at all: open, half a coil, a slip of the decimal point.</summary>
    private const double Farthest = 2;

    private readonly List<CoilRead> _read = [];
    private readonly List<LearningReading> _ohms = [];
    private readonly List<LearningReading> _henries = [];
    private readonly Dictionary<Effect, LearningCell> _wire = [];
    private readonly List<LineOfCoils> _lines = [];
    private int _withoutTemperature;
    private readonly Dictionary<(Guid Recipe, int Number, string Coil), PlainCoil> _plain = [];

    /// <summary>Reads every batch.</summary>
    public async Task<GatheredCoils> ReadAsync(LearningBook book, CancellationToken cancel)
    {
        KnownParts parts = await KnownParts.ReadAsync(records.Recipes, records.Rules, cancel).ConfigureAwait(false);
        IReadOnlyDictionary<string, SpoolRecord> spools = await LearntParts.SpoolsAsync(records, cancel).ConfigureAwait(false);
        ILookup<Guid, SpoolReadingRecord> lengths = (await records.Stock.SpoolReadingsAsync(cancel).ConfigureAwait(false)).ToLookup(
            reading => reading.SpoolId
        );
        List<RecordStatus<BatchRecord>> read = [];
        foreach (BatchRecord batch in await records.Batches.AllAsync(cancel).ConfigureAwait(false))
        {
            read.Add(
                await RecordStatus
                    .ReadAsync(
                        "Batch " + batch.Name,
                        async () =>
                        {
                            await AddAsync(batch, parts, book, spools, lengths, cancel).ConfigureAwait(false);
                            return batch;
                        },
                        batch.Id
                    )
                    .ConfigureAwait(false)
            );
        }

        return new GatheredCoils(_ohms, _henries, [.. _wire.Values], _lines, _withoutTemperature, _read, read.Unreadable());
    }

    private async Task AddAsync(
        BatchRecord batch,
        KnownParts parts,
        LearningBook book,
        IReadOnlyDictionary<string, SpoolRecord> spools,
        ILookup<Guid, SpoolReadingRecord> lengths,
        CancellationToken cancel
    )
    {
        IReadOnlyList<ReadingRecord> readings = await records.Readings.OfBatchAsync(batch.Id, cancel).ConfigureAwait(false);
        if (readings.Count == 0)
        {
            return;
        }

        IReadOnlyList<BatchEvent> events = await records.Batches.EventsAsync(batch.Id, cancel).ConfigureAwait(false);
        BatchDossier dossier = new(batch, readings, events, new RecordStatus<VerdictLimits>(null, null));
        PlainCoil plain = await PlainAsync(batch, parts, cancel).ConfigureAwait(false);
        foreach (string tag in dossier.Tags)
        {
            CoilOrigin origin = dossier.OriginOf(tag);
            LearningCoil coil = CoilKeys.Of(
                plain.Coil,
                plain.Wire,
                CoilKeys.Lot(origin.Spool, spools),
                origin.Spool,
                origin.Machine,
                (kind, name) => book.EndingsOf(kind, name, origin.WoundUtc)
            );
            IReadOnlyList<ReadingRecord> inForce = dossier.InForce(tag);
            double turns = inForce.LastOrDefault(reading => reading.Turns is > 0)?.Turns ?? dossier.TurnsOf(tag) ?? plain.Turns;
            double? ohm = Usable(inForce, QuantityKey.DcResistance)?.Comparable();
            Add(_ohms, ohm / plain.Ohm(turns), coil.OfResistance);
            _read.AddRange(ohm is { } at20C ? [new CoilRead(batch, at20C)] : []);
            ReadingRecord? henry = Usable(inForce, QuantityKey.Inductance);
            double? expected = henry is null ? null : plain.Henry(henry.AtHz ?? VerdictLimits.UsualHz, turns);
            Add(_henries, henry?.Si / expected, coil.OfInductance);
            _withoutTemperature += inForce.Any(IsWithoutTemperature) ? 1 : 0;
            Name(coil);
            AddLength(coil, plain, spools.GetValueOrDefault(origin.Spool.ToUpperInvariant()), lengths);
        }
    }

    private static ReadingRecord? Usable(IReadOnlyList<ReadingRecord> inForce, string quantity) =>
        inForce.LastOrDefault(reading => reading.Quantity == quantity) is { Si: > 0, Flag: "" } reading && !IsWithoutTemperature(reading)
            ? reading
            : null;

    /// <summary>Of a reading whose temperature nobody knows, 5 °C are 2 %: more than what is to be learnt.</summary>
    private static bool IsWithoutTemperature(ReadingRecord reading) =>
        reading.TemperatureC is null && Quantity.Find(reading.Quantity) is { IsComparedAt20C: true };

    private static void Add(List<LearningReading> to, double? ratio, IReadOnlyList<EffectPrior> effects)
    {
        if (ratio is > 1 / Farthest and < Farthest)
        {
            to.Add(new LearningReading(Math.Log(ratio.Value), effects));
        }
    }

    /// <summary>Bobbins are B1, B2…, lots of wire W1, W2…, as they were first wound.</summary>
    private void Name(LearningCoil coil)
    {
        Name(new Effect(EffectKind.Bobbin, coil.Bobbin), "B");
        Name(coil.OfWire[1].Effect, "W");
    }

    private void Name(Effect effect, string letter)
    {
        int known = _lines.FindIndex(line => line.Effect == effect);
        if (known >= 0)
        {
            _lines[known] = _lines[known] with { Coils = _lines[known].Coils + 1 };
            return;
        }

        string name = FormattableString.Invariant($"{letter}{_lines.Count(line => line.Effect.Kind == effect.Kind) + 1}");
        _lines.Add(new LineOfCoils(name, effect, 1));
    }

    /// <summary>A measured length says the ohms per metre of its spool, whatever the bobbin.</summary>
    private void AddLength(LearningCoil coil, PlainCoil plain, SpoolRecord? spool, ILookup<Guid, SpoolReadingRecord> lengths)
    {
        IReadOnlyList<EffectPrior> wire = coil.OfWire;
        if (
            spool is not null
            && !_wire.ContainsKey(wire[^1].Effect)
            && WireCatalogue.Standard.Find(spool.Gauge) is { } size
            && SpoolMeasure.Of(size, lengths[spool.Id]) is { } measure
        )
        {
            double deviation = measure.OhmPerM.StandardDeviation / measure.OhmPerM.Value;
            _wire[wire[^1].Effect] = new LearningCell(
                wire,
                1 / (deviation * deviation),
                Math.Log(measure.OhmPerM.Value / plain.Wire.OhmPerMAt20C),
                Coils: 0,
                Good: 0
            );
        }
    }

    private async Task<PlainCoil> PlainAsync(BatchRecord batch, KnownParts parts, CancellationToken cancel)
    {
        (Guid, int, string) key = (batch.RecipeId, batch.RevisionNumber, batch.CoilName);
        if (!_plain.TryGetValue(key, out PlainCoil? known))
        {
            RevisionRecord revision = await records
                .Recipes.FindRevisionAsync(batch.RecipeId, batch.RevisionNumber, cancel)
                .ConfigureAwait(false)
                ?? throw new InvalidOperationException($"Batch {batch.Id} stands on a revision that is not there.");
            known = _plain[key] = new PlainCoil(revision, batch.CoilName, parts);
        }

        return known;
    }
}

/// <summary>A coil as forecast from its recipe alone: without targets, and with nothing learnt.</summary>
internal sealed class PlainCoil
{
    private readonly CoilPlan _plan;
    private readonly ExpectedReadings _expected;

    public PlainCoil(RevisionRecord revision, string coilName, KnownParts parts)
    {
        _plan = CoilPlan.Of(revision, coilName, parts);
        Recipe recipe = parts.Fill(ReleasedRecipe.Of(revision));
        Coil = recipe.Coils[_plan.Index];
        _expected = new ExpectedReadings(
            recipe with
            {
                Targets = new Dictionary<string, Target>(),
                Coils = [.. recipe.Coils.Select(coil => coil with { Targets = new Dictionary<string, Target>() })],
            },
            recipe.Coils.Count == 1 ? null : _plan.Index
        );
    }

    public RecipeCoil Coil { get; }

    public WireModel Wire => _plan.Model.Wire;

    public double Turns => _plan.SetUp.Turns;

    /// <summary>DC resistance at 20 °C with so many turns, Ω: it goes with the wire that they take.</summary>
    public double Ohm(double turns) => _plan.Forecast.Coils[_plan.Index].DcResistance.Value * (_plan.WireM(turns) / _plan.WireM(Turns));

    /// <summary>What a meter shows of the inductance at a frequency, H; null where that cannot be foretold. Turns act squared.</summary>
    public double? Henry(double hz, double turns) => _expected.At(hz)?.InductanceH * (turns / Turns) * (turns / Turns);
}
