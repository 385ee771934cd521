using Coilwright.Analysis.Quantities;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Quantities;
using Coilwright.Workshop.Readings;

namespace Coilwright.Workshop.Batches;

/// <summary>Works out what a correction puts in the place of a coil's readings.</summary>
/// <param name="batch">The batch.</param>
/// <param name="all">All of its readings in order of entry, before the correction.</param>
/// <param name="correction">What was said.</param>
/// <param name="nowUtc">When it arrived.</param>
/// <param name="expectedOhm">What a good coil reads.</param>
internal sealed class CoilCorrector(
    BatchRecord batch,
    IReadOnlyList<ReadingRecord> all,
    CoilCorrection correction,
    DateTimeOffset nowUtc,
    double expectedOhm
)
{
    private const int LongestTag = 40,
        LongestReason = 400;

    private readonly List<Problem> _problems = [];
    private readonly List<ReadingRecord> _made = [];
    private readonly EntryIds _ids = new(correction.Id);

    /// <summary>Every problem; then nothing may be stored.</summary>
    public IReadOnlyList<Problem> Problems => _problems;

    /// <summary>The coil's tag before.</summary>
    public string Tag { get; } = BatchTags.Tidy(batch, correction.Tag);

    /// <summary>The coil's tag after.</summary>
    public string NewTag { get; } = BatchTags.Tidy(batch, correction.NewTag.Trim().Length > 0 ? correction.NewTag : correction.Tag);

    /// <summary>New readings, the first under the correction's own id.</summary>
    public IReadOnlyList<ReadingRecord> Read()
    {
        IReadOnlyList<ReadingRecord> inForce = ReadingChain.InForce(all);
        ReadingRecord[] own = [.. inForce.Where(reading => reading.Tag == Tag)];
        if (own.Length == 0)
        {
            _problems.Add(new Problem("tag", $"{Tag} has no reading to correct", correction.Tag));
            return [];
        }

        CheckTag(inForce);
        foreach (ReadingAsWritten other in correction.Readings.Where(written => own.All(reading => reading.Id != written.Id)))
        {
            bool known = all.Any(reading => reading.Id == other.Id);
            string why = known ? "somebody has corrected that reading meanwhile; look at the coil again" : $"{Tag} has no such reading";
            _problems.Add(new Problem("reading", why, other.Value));
        }

        foreach (ReadingRecord reading in own)
        {
            Correct(reading, own);
        }

        if (_made.Count == 0 && _problems.Count == 0)
        {
            _problems.Add(new Problem("reading", "nothing was changed: every figure is as it stands"));
        }

        string reason = correction.Reason.Trim();
        if (reason.Length is 0 or > LongestReason || ReadingUndo.IsReason(reason))
        {
            _problems.Add(new Problem("reason", "a correction needs a reason", null, "a few words"));
        }

        return _problems.Count > 0 ? [] : [.. _made.Select(made => made with { Reason = reason })];
    }

    private void CheckTag(IReadOnlyList<ReadingRecord> inForce)
    {
        if (NewTag.Length is 0 or > LongestTag)
        {
            _problems.Add(new Problem("newTag", "a coil needs a tag", NewTag, "1 to 40 letters"));
        }

        ReadingRecord[] there = NewTag == Tag ? [] : [.. inForce.Where(reading => reading.Tag == NewTag)];
        if (there.Length > 0)
        {
            string typed = string.Join(", ", there.Select(reading => reading.Typed));
            _problems.Add(
                new Problem(
                    "newTag",
                    $"{NewTag} is there already ({typed}). Is it the same coil, read under two tags? Then undo one of the two. "
                        + $"Or does {NewTag} bear a wrong tag? Then correct {NewTag} first",
                    NewTag
                )
            );
        }
    }

    private void Correct(ReadingRecord old, ReadingRecord[] own)
    {
        ReadingAsWritten stands = ReadingAsWritten.Of(old).Trimmed;
        ReadingAsWritten wanted = correction.Readings.LastOrDefault(one => one.Id == old.Id)?.Trimmed ?? stands;
        if (wanted == stands && NewTag == Tag)
        {
            return;
        }

        if (wanted.Value.Length == 0)
        {
            TakeAway(old, own);
            return;
        }

        Guid id = _ids.Next(old.Quantity, old.Id);
        EntryReader reader = new(
            new CoilEntry
            {
                Id = id,
                BatchId = batch.Id,
                Tag = NewTag,
                Resistance = "",
                Person = correction.Person,
            },
            NewTag,
            room: null,
            nowUtc,
            expectedOhm
        );
        ReadingRecord made =
            wanted == stands
                ? old with
                {
                    Id = id,
                    Tag = NewTag,
                    Person = correction.Person.Trim(),
                    TimeUtc = nowUtc,
                }
                : reader.Again(old, stands, wanted);
        if (wanted != stands && made.Flag.Length > 0 && made.Flag != PossibleReading.Open)
        {
            _problems.Add(new Problem(FieldOf(old), $"\"{wanted.Value}\": {made.Flag}", null, AllowedOf(old)));
        }

        _made.Add(made with { Supersedes = old.Id });
    }

    private void TakeAway(ReadingRecord old, ReadingRecord[] own)
    {
        bool Stays(ReadingRecord other) => correction.Readings.All(one => one.Id != other.Id || one.Value.Trim().Length > 0);
        bool othersStay = own.Any(other => other.Id != old.Id && Stays(other));
        if (!othersStay)
        {
            _problems.Add(new Problem(FieldOf(old), $"{Tag} needs one reading at least: nothing else of it is left", null, AllowedOf(old)));
        }

        _made.Add(
            old with
            {
                Id = _ids.Next(old.Quantity, old.Id),
                Tag = NewTag,
                Typed = "",
                Si = null,
                Flag = "",
                Turns = null,
                Person = correction.Person.Trim(),
                TimeUtc = nowUtc,
                Supersedes = old.Id,
                Withdraws = true,
            }
        );
    }

    private static string FieldOf(ReadingRecord reading) => Quantity.Find(reading.Quantity)?.Field ?? reading.Quantity;

    private static string AllowedOf(ReadingRecord reading) =>
        reading.Quantity switch
        {
            QuantityKey.DcResistance => "for example 7.43 k, 7k43, 7430 or open",
            QuantityKey.Inductance => "for example 2.41 H",
            _ => "a number above 0",
        };
}
