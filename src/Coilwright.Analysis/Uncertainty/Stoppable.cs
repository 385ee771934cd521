namespace Coilwright.Analysis.Uncertainty;

/// <summary>Work in many parts that may be stopped between them, so that what is done by then can be told.</summary>
internal static class Stoppable
{
    /// <summary>Does every part, several at once.</summary>
    /// <param name="parts">How many there are.</param>
    /// <param name="part">Does one, by its number.</param>
    /// <param name="threads">Most at once; -1 takes all cores.</param>
    /// <param name="cancel">Stops it.</param>
    /// <returns>False when it was stopped; parts under way then are given up.</returns>
    public static bool For(int parts, Action<int> part, int threads, CancellationToken cancel)
    {
        try
        {
            ParallelOptions options = new() { CancellationToken = cancel, MaxDegreeOfParallelism = threads };
            Parallel.For(0, parts, options, part);
            return true;
        }
        catch (OperationCanceledException) when (cancel.IsCancellationRequested)
        {
            return false;
        }
        catch (AggregateException several)
            when (cancel.IsCancellationRequested && several.InnerExceptions.All(one => one is OperationCanceledException))
        {
            return false;
        }
    }
}
