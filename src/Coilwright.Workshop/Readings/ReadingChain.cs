using System.Security.Cryptography;
using System.Text;

namespace Coilwright.Workshop.Readings;

/// <summary>Which readings are in force, and which belong to one entry.</summary>
public static class ReadingChain
{
    /// <summary>Readings that nothing has taken the place of; a withdrawal itself is none.</summary>
    public static IReadOnlyList<ReadingRecord> InForce(IReadOnlyList<ReadingRecord> readings)
    {
        HashSet<Guid> superseded =
        [
            .. readings.Where(reading => reading.Supersedes is not null).Select(reading => reading.Supersedes!.Value),
        ];
        return [.. readings.Where(reading => !reading.Withdraws && !superseded.Contains(reading.Id))];
    }

    /// <summary>For each reading, by id, the one that stood first where it stands: itself, or what it took the place of.</summary>
    /// <param name="readings">All of a batch in order of entry.</param>
    public static IReadOnlyDictionary<Guid, ReadingRecord> Firsts(IReadOnlyList<ReadingRecord> readings)
    {
        Dictionary<Guid, ReadingRecord> firsts = [];
        foreach (ReadingRecord reading in readings)
        {
            firsts[reading.Id] = reading.Supersedes is { } old && firsts.TryGetValue(old, out ReadingRecord? first) ? first : reading;
        }

        return firsts;
    }

    /// <summary>For each reading, by id, the tag that its coil bears now: that of the newest reading in its place.</summary>
    /// <param name="readings">All of a batch in order of entry.</param>
    public static IReadOnlyDictionary<Guid, string> TagsNow(IReadOnlyList<ReadingRecord> readings)
    {
        Dictionary<Guid, string> tags = [];
        foreach (ReadingRecord reading in readings.Reverse())
        {
            string tag = tags.GetValueOrDefault(reading.Id, reading.Tag);
            tags[reading.Id] = tag;
            if (reading.Supersedes is { } old)
            {
                tags[old] = tag;
            }
        }

        return tags;
    }

    /// <summary>Id of a further reading of an entry: the same entry gives the same ids, however often it is sent.</summary>
    public static Guid IdWithin(Guid entry, string quantity) =>
        new(SHA256.HashData(Encoding.UTF8.GetBytes($"{entry:N}/{quantity}")).AsSpan(0, 16));

    /// <summary>True when two readings say the same: all but the time at which they arrived.</summary>
    public static bool SaysTheSame(ReadingRecord one, ReadingRecord other) =>
        one with { TimeUtc = default } == other with { TimeUtc = default };
}
