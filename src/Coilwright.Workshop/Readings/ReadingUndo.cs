namespace Coilwright.Workshop.Readings;

/// <summary>Which entry an undo takes back, and what it puts in its place.</summary>
/// <remarks>
/// Nothing in the place of what was entered; the reading before in the place of a correction, also of one that took a reading away.
/// Newest first: what an undo put back in force counts where it was first entered, so that one undo after another walks the whole way back.
/// </remarks>
public sealed class ReadingUndo
{
    private const string Undone = "undone",
        Restored = "undone: the reading before holds again";

    private readonly IReadOnlyList<ReadingRecord> _all;
    private readonly Dictionary<Guid, ReadingRecord> _byId;

    /// <summary>For each record, by id, the entry or correction that it brings back in force; itself when it is no undo.</summary>
    private readonly Dictionary<Guid, ReadingRecord> _made = [];

    /// <summary>Reads the records.</summary>
    /// <param name="all">All readings of a batch in order of entry.</param>
    public ReadingUndo(IReadOnlyList<ReadingRecord> all)
    {
        _all = all;
        _byId = all.ToDictionary(reading => reading.Id);
        foreach (ReadingRecord reading in all)
        {
            bool restores = reading.Reason == Restored && reading.Supersedes is not null;
            _made[reading.Id] = restores && _made[reading.Supersedes!.Value].Supersedes is { } before ? _made[before] : reading;
        }

        Last = Newest();
    }

    /// <summary>The records that hold of the entry or correction made last; empty when there is nothing to undo.</summary>
    public IReadOnlyList<ReadingRecord> Last { get; }

    /// <summary>What an undo takes back, in words: "C-014", "the correction of C-003"; empty when there is nothing.</summary>
    public string Words
    {
        get
        {
            if (Last is not [var first, ..])
            {
                return "";
            }

            return _made[first.Id].Supersedes is null ? first.Tag : $"the correction of {first.Tag}";
        }
    }

    /// <summary>True when a record was made by an undo.</summary>
    public static bool IsUndo(ReadingRecord reading) => IsReason(reading.Reason);

    /// <summary>True when a reason is the one by which undos are known, so that no person may give it.</summary>
    public static bool IsReason(string reason) => reason is Undone or Restored;

    /// <summary>The records that undo the entry made last.</summary>
    /// <param name="undoId">Client-made id.</param>
    /// <param name="person">Who undoes.</param>
    /// <param name="nowUtc">When.</param>
    public IReadOnlyList<ReadingRecord> Make(Guid undoId, string person, DateTimeOffset nowUtc)
    {
        EntryIds ids = new(undoId);
        return
        [
            .. Last.Select(reading =>
                Undoing(reading) with
                {
                    Id = ids.Next(reading.Quantity, reading.Id),
                    Supersedes = reading.Id,
                    Person = person,
                    TimeUtc = nowUtc,
                }
            ),
        ];
    }

    private ReadingRecord Undoing(ReadingRecord reading) =>
        _made[reading.Id].Supersedes is { } before
            ? _byId[before] with
            {
                Reason = Restored,
            }
            : reading with
            {
                Typed = "",
                Si = null,
                Flag = "",
                Turns = null,
                Reason = Undone,
                Withdraws = true,
            };

    private IReadOnlyList<ReadingRecord> Newest()
    {
        HashSet<Guid> superseded = [.. _all.Select(reading => reading.Supersedes).OfType<Guid>()];
        ReadingRecord[] hold = [.. _all.Where(reading => !superseded.Contains(reading.Id) && !(reading.Withdraws && IsUndo(reading)))];
        if (hold.Length == 0)
        {
            return [];
        }

        Dictionary<Guid, int> placeOf = _all.Select((reading, place) => (reading.Id, place)).ToDictionary(one => one.Id, one => one.place);
        ReadingRecord newest = _made[hold.MaxBy(reading => placeOf[_made[reading.Id].Id])!.Id];
        Guid entry = (_all.FirstOrDefault(reading => EntryIds.Contain(reading.Id, newest)) ?? newest).Id;
        return [.. hold.Where(reading => EntryIds.Contain(entry, _made[reading.Id]))];
    }
}
