using Coilwright.Analysis.Quantities;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Notes;

/// <summary>Old notes as readings of a batch, with every problem.</summary>
/// <param name="batch">The batch.</param>
/// <param name="before">Its readings.</param>
/// <param name="expectedOhm">What a good coil reads; decides what "6,210" means. 0 for not known.</param>
/// <param name="nowUtc">For notes without a time.</param>
/// <param name="person">For notes without a name.</param>
internal sealed class NoteReadings(
    BatchRecord batch,
    IReadOnlyList<ReadingRecord> before,
    double expectedOhm,
    DateTimeOffset nowUtc,
    string person
)
{
    private static readonly Dictionary<string, NoteRole> s_fields = new(StringComparer.Ordinal)
    {
        ["resistance"] = NoteRole.Resistance,
        ["inductance"] = NoteRole.Inductance,
        ["inductanceAt"] = NoteRole.InductanceAt,
        ["temperature"] = NoteRole.Temperature,
        ["turns"] = NoteRole.Turns,
        ["tag"] = NoteRole.Tag,
        ["instrument"] = NoteRole.Instrument,
        ["person"] = NoteRole.Person,
    };

    private readonly List<ReadingRecord> _readings = [];
    private readonly List<Problem> _problems = [];
    private readonly List<string> _notes = [];

    /// <summary>New readings in the order of the notes.</summary>
    public IReadOnlyList<ReadingRecord> Readings => _readings;

    /// <summary>Everything that is wrong.</summary>
    public IReadOnlyList<Problem> Problems => _problems;

    /// <summary>What is no fault and worth knowing.</summary>
    public IReadOnlyList<string> Notes => _notes;

    /// <summary>Coils that are new.</summary>
    public int Coils { get; private set; }

    /// <summary>Coils that the same notes brought in before.</summary>
    public int AlreadyThere { get; private set; }

    /// <summary>Reads all of them.</summary>
    /// <param name="notes">The notes.</param>
    /// <param name="wanted">Coils that the batch wants.</param>
    public void Read(IReadOnlyList<CoilNote> notes, int wanted)
    {
        Dictionary<string, int> lines = new(StringComparer.Ordinal);
        List<string> tags = [.. ReadingChain.InForce(before).Select(reading => reading.Tag).Distinct(StringComparer.Ordinal)];
        foreach (CoilNote note in notes)
        {
            string tag = TagOf(note);
            IReadOnlyList<ReadingRecord> readings = Of(note, tag);
            if (tag.Length == 0)
            {
                Add(note, NoteRole.Tag, "a coil needs a tag", null, TextLimit.Tag.Allowed);
            }
            else if (!lines.TryAdd(tag, note.Line))
            {
                Add(note, NoteRole.Tag, FormattableString.Invariant($"line {lines[tag]} has this tag already"), tag, null);
            }
            else if (readings.Count == 0)
            {
                _notes.Add(FormattableString.Invariant($"line {note.Line}, {tag}: nothing was measured, left aside"));
            }
            else if (IsThere(readings))
            {
                AlreadyThere++;
            }
            else if (tags.Contains(tag, StringComparer.Ordinal))
            {
                Add(note, NoteRole.Tag, $"batch {batch.Name} has a coil of this tag already", tag, "a tag of its own, or another batch");
            }
            else
            {
                Keep(note, tag, readings, tags, wanted);
            }
        }
    }

    private void Keep(CoilNote note, string tag, IReadOnlyList<ReadingRecord> readings, List<string> tags, int wanted)
    {
        if (BatchNumber.Refusal(batch, wanted, tags, tag) is { } beyond)
        {
            Add(note, NoteRole.Tag, beyond.Message, beyond.Understood, beyond.Allowed);
        }

        tags.Add(tag);
        _readings.AddRange(readings);
        Coils++;
    }

    /// <summary>A bare number is the coil's number in its batch.</summary>
    private string TagOf(CoilNote note)
    {
        string written = note.Written(NoteRole.Tag).Trim();
        bool isNumber = written.Length > 0 && written.All(char.IsAsciiDigit);
        return BatchTags.Tidy(batch, isNumber ? batch.TagPrefix + written : written);
    }

    private IReadOnlyList<ReadingRecord> Of(CoilNote note, string tag)
    {
        string who = note.Written(NoteRole.Person).Trim();
        CoilEntry entry = new()
        {
            Id = ReadingChain.IdWithin(batch.Id, "note/" + tag), // the same notes again are there already
            BatchId = batch.Id,
            Tag = tag,
            Resistance = note.Typed(NoteRole.Resistance),
            Inductance = note.Typed(NoteRole.Inductance),
            InductanceAt = note.Typed(NoteRole.InductanceAt),
            Temperature = note.Typed(NoteRole.Temperature),
            Turns = note.Typed(NoteRole.Turns),
            Instrument = note.Written(NoteRole.Instrument).Trim(),
            Person = who.Length > 0 ? who : person,
        };
        EntryReader reader = new(entry, tag, room: null, note.TimeUtc ?? nowUtc, expectedOhm);
        IReadOnlyList<ReadingRecord> readings = reader.Read();
        IEnumerable<Problem> texts = TextLimit.Check([("tag", tag), ("person", entry.Person), ("instrument", entry.Instrument)]);
        foreach (Problem problem in reader.Problems.Concat(texts))
        {
            Add(note, s_fields[problem.Field], problem.Message, problem.Understood, problem.Allowed);
        }

        return [.. readings.Select(reading => reading with { Typed = AsWritten(note, reading) })];
    }

    private static string AsWritten(CoilNote note, ReadingRecord reading) =>
        note.Written(reading.Quantity == QuantityKey.DcResistance ? NoteRole.Resistance : NoteRole.Inductance);

    private bool IsThere(IReadOnlyList<ReadingRecord> readings) =>
        readings.All(reading =>
            before.FirstOrDefault(one => one.Id == reading.Id) is { } there && ReadingChain.SaysTheSame(there, reading)
        );

    private void Add(CoilNote note, NoteRole role, string message, string? understood, string? allowed)
    {
        string column = note.Cells.GetValueOrDefault(role.Key)?.Column ?? role.Label;
        _problems.Add(new Problem(FormattableString.Invariant($"line {note.Line}, {column}"), message, understood, allowed));
    }
}
