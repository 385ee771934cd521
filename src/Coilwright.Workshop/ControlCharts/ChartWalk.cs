namespace Coilwright.Workshop.ControlCharts;

/// <summary>Walks batches backwards, newest reading first, and keeps one reading in force for each coil.</summary>
/// <param name="query">What is wanted.</param>
public sealed class ChartWalk(ChartQuery query)
{
    private readonly List<Coil> _coils = [];
    private readonly Dictionary<string, Coil?> _seen = new(StringComparer.Ordinal);
    private readonly Dictionary<Guid, string> _superseded = [];
    private readonly PriorityQueue<long, long> _kept = new();
    private Guid _batch;

    /// <summary>Goes over to another batch.</summary>
    public void Open(Guid batch)
    {
        _batch = batch;
        _seen.Clear();
        _superseded.Clear();
    }

    /// <summary>True when no reading older than this place of the order can be among the last coils any more.</summary>
    public bool PastAll(long order) => !query.First && _kept.Count >= query.Coils && order < _kept.Peek();

    /// <summary>
    /// True when a batch with these ends of the order can add nothing, nor any that begins later (for the first coils) or ends earlier (for
    /// the last).
    /// </summary>
    public bool NeedsNoMore(long first, long last) =>
        query.First ? Coils() is { } coils && coils.Count >= query.Coils && first > coils[^1].Order : PastAll(last);

    /// <summary>Takes the next older reading of the batch.</summary>
    public void Take(in ChartRow row)
    {
        bool superseded = _superseded.TryGetValue(row.Id, out string? now),
            stands = !row.Withdraws && !superseded;
        string tag = now ?? row.Tag; // a reading whose tag was corrected belongs to the coil that bears the new one
        if (row.Supersedes is { } old)
        {
            _superseded[old] = tag;
        }

        if (_seen.TryGetValue(tag, out Coil? known))
        {
            if (known is not null && !row.Withdraws)
            {
                known.FirstOrder = row.Order;
            }

            return;
        }

        if (!stands)
        {
            return;
        }

        ChartReading? reading = row.Si is > 0 and { } si
            ? new ChartReading(row.Order, _batch, row.Tag, si, row.TemperatureC, row.AtHz, row.Person, row.TimeUtc)
            : null;
        Coil? coil = reading is not null && query.Wanted(reading) ? new Coil(reading) : null;
        _seen.Add(row.Tag, coil);
        if (coil is not null)
        {
            Keep(coil);
        }
    }

    /// <summary>The coils, in the order in which they were first entered.</summary>
    public IReadOnlyList<ChartReading> Coils()
    {
        IEnumerable<ChartReading> all = _coils
            .Select(coil => coil.Reading with { Order = coil.FirstOrder })
            .OrderBy(reading => reading.Order);
        return query.First ? [.. all.Where(reading => reading.Order >= query.FromOrder).Take(query.Coils)] : [.. all.TakeLast(query.Coils)];
    }

    private void Keep(Coil coil)
    {
        _coils.Add(coil);
        _kept.Enqueue(coil.FirstOrder, coil.FirstOrder);
        if (_kept.Count > query.Coils)
        {
            _kept.Dequeue();
        }
    }

    private sealed class Coil(ChartReading reading)
    {
        public ChartReading Reading { get; } = reading;
        public long FirstOrder { get; set; } = reading.Order;
    }
}
