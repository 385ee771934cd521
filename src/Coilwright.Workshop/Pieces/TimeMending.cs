using System.Globalization;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces.Events;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Steps;

namespace Coilwright.Workshop.Pieces;

/// <summary>
/// Mends the time of an entry made while the clock was wrong: a new event names it, with the right time and the reason. Holds follow that
/// time.
/// </summary>
public sealed class TimeMending(IPieceRecords records, PieceService shelf, TimeProvider clock)
{
    /// <summary>Gives the entry another time, on every piece named, or gives every problem and changes nothing.</summary>
    /// <param name="id">Client-made id; sent twice it is kept once.</param>
    /// <param name="serials">The pieces.</param>
    /// <param name="about">An event of the entry; null takes the newest entry of each piece.</param>
    /// <param name="at">The right time as typed, by the shop's clock: "2026-12-01 10:40".</param>
    /// <param name="reason">Why it was wrong.</param>
    /// <param name="person">Who mends it.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<IReadOnlyList<Problem>> MendAsync(
        Guid id,
        IReadOnlyList<string> serials,
        Guid? about,
        string at,
        string reason,
        string person,
        CancellationToken cancel
    )
    {
        List<Problem> problems = [];
        DateTimeOffset nowUtc = clock.GetUtcNow();
        TimeZoneInfo zone = (await shelf.Rules.CurrentAsync(cancel).ConfigureAwait(false)).Zone;
        if (reason.Trim().Length == 0)
        {
            problems.Add(new Problem("reason", "why was the time wrong?", null, "a few words"));
        }

        DateTimeOffset? right = Read(at, zone, nowUtc, problems);
        List<PieceEvent> events = [];
        foreach (PieceSnapshot life in await shelf.FindAllAsync(serials, problems, cancel).ConfigureAwait(false))
        {
            IReadOnlyList<PieceEvent> entry = Entry(life, about);
            if (entry.Count == 0)
            {
                string message = $"{life.Piece.Serial} has no such entry that holds";
                problems.Add(new Problem("entry", message, life.Piece.Serial, "an entry of its history that was not taken back"));
            }
            else if (right is { } time)
            {
                problems.AddRange(OutOfOrder(life, entry, time, zone));
                events.AddRange(
                    entry.Select(one => new TimeMended
                    {
                        Id = ReadingChain.IdWithin(id, one.Id.ToString()),
                        PieceId = life.Piece.Id,
                        About = one.Id,
                        RightUtc = time.ToUniversalTime(),
                        Reason = reason.Trim(),
                        Person = person.Trim(),
                        TimeUtc = nowUtc,
                    })
                );
            }
        }

        if (problems.Count == 0)
        {
            await records.AddEventsAsync(events, [], cancel).ConfigureAwait(false);
        }

        return problems;
    }

    /// <summary>The events that were entered together.</summary>
    private static IReadOnlyList<PieceEvent> Entry(PieceSnapshot life, Guid? about)
    {
        IReadOnlyList<PieceEvent> inForce = life.History.InForce;
        PieceEvent? newest = inForce.Count > 0 ? inForce[^1] : null;
        PieceEvent? one = about is { } id ? inForce.FirstOrDefault(there => there.Id == id) : newest;
        return one is null ? [] : [.. inForce.Where(there => there.TimeUtc == one.TimeUtc)];
    }

    private static IEnumerable<Problem> OutOfOrder(
        PieceSnapshot life,
        IReadOnlyList<PieceEvent> entry,
        DateTimeOffset time,
        TimeZoneInfo zone
    )
    {
        PieceEvent? before = life.History.InForce.TakeWhile(one => one.Id != entry[0].Id).LastOrDefault();
        DateTimeOffset earliest = before?.TimeUtc ?? life.Piece.TimeUtc;
        if (time < earliest && earliest < entry[0].TimeUtc)
        {
            string message = $"{life.Piece.Serial}: that is before the entry under it";
            yield return new Problem("at", message, ShopTime.Words(time, zone), "from " + ShopTime.Words(earliest, zone));
        }
    }

    private static DateTimeOffset? Read(string typed, TimeZoneInfo zone, DateTimeOffset nowUtc, List<Problem> problems)
    {
        string allowed = $"up to now, {ShopTime.Words(nowUtc, zone)}, written like that";
        string plain = typed.Trim().Replace('T', ' ');
        if (!DateTime.TryParse(plain, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateTime local) || zone.IsInvalidTime(local))
        {
            problems.Add(new Problem("at", "when was it really?", typed.Length == 0 ? null : typed, allowed));
            return null;
        }

        DateTimeOffset time = new DateTimeOffset(local, zone.GetUtcOffset(local)).ToUniversalTime();
        if (time > nowUtc + ClockQuestion.Few)
        {
            problems.Add(new Problem("at", "that time has not come yet", ShopTime.Words(time, zone), allowed));
            return null;
        }

        return time;
    }
}
