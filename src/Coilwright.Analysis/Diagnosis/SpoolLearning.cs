namespace Coilwright.Analysis.Diagnosis;

/// <summary>What was learnt from the coils of one spool.</summary>
internal sealed class SpoolLearning
{
    private readonly BatchOffsets _offsets;
    private readonly int[] _learnt;
    private readonly WeighedCoil[] _weighed;

    /// <summary>Weighs the coils that are learnt from.</summary>
    /// <param name="batch">Every coil of the batch.</param>
    /// <param name="learnt">Places of those that are learnt from, in order.</param>
    /// <param name="offsets">What all coils have in common.</param>
    public SpoolLearning(IReadOnlyList<CoilEvidence> batch, int[] learnt, BatchOffsets offsets)
    {
        (_learnt, _offsets) = (learnt, offsets);
        _weighed = new WeighedCoil[learnt.Length];
        double[][] logs = new double[learnt.Length][];
        (int from, int to) = Range(batch, learnt);
        Parallel.For(0, learnt.Length, n =>
        {
            _weighed[n] = offsets.Weigh(learnt[n]);
            logs[n] = _weighed[n].LogLikelihood(from, to);
        });
        Run = new SpoolRun(logs, learnt.Length > 0 ? batch[learnt[0]] : batch[0]);
    }

    /// <summary>
    /// Where on the grid the offset can lie, by place: where most of the coils read, and some way to either side. Others would cost time.
    /// </summary>
    private static (int From, int To) Range(IReadOnlyList<CoilEvidence> batch, int[] learnt)
    {
        const double Beyond = 0.03;
        double[] logs =
        [
            .. learnt.Where(n => batch[n].OhmAt20C is > 0).Select(n => Math.Log(batch[n].OhmAt20C!.Value / batch[n].NominalOhm)).Order(),
        ];
        if (logs.Length < CommonOffset.Fewest)
        {
            return (0, SpoolPrior.Grid.Length);
        }

        double low = logs[logs.Length / 8] - Beyond,
            high = logs[logs.Length - 1 - logs.Length / 8] + Beyond;
        int from = Array.FindIndex(SpoolPrior.Grid, offset => offset >= low),
            to = Array.FindLastIndex(SpoolPrior.Grid, offset => offset <= high) + 1;
        return from >= 0 && to > from ? (from, to) : (0, SpoolPrior.Grid.Length);
    }

    /// <summary>The run of the coils that were learnt from.</summary>
    public SpoolRun Run { get; }

    /// <summary>Places in the batch of the coils that were learnt from.</summary>
    public IReadOnlyList<int> Learnt => _learnt;

    /// <summary>One coil, weighed.</summary>
    public WeighedCoil Weigh(int place) => PlaceOf(place) is (var at, true) ? _weighed[at] : _offsets.Weigh(place);

    /// <summary>Where a coil stands among those learnt from, and whether it is one of them.</summary>
    public (int At, bool IsAmong) PlaceOf(int place)
    {
        int found = Array.BinarySearch(_learnt, place);
        return found >= 0 ? (found, true) : (~found, false);
    }
}
