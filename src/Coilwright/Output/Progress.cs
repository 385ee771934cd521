using System.Globalization;

namespace Coilwright.Output;

/// <summary>Shows on a terminal that something longer than a second is under way, and for how long.</summary>
internal static class Progress
{
    private static readonly TimeSpan s_tick = TimeSpan.FromSeconds(1);

    /// <summary>Does the work on another thread; Ctrl+C stops it.</summary>
    /// <param name="desk">Messages go to its error writer, and only when that is a terminal.</param>
    /// <param name="what">What is being done, for example "Forecasting".</param>
    /// <param name="work">The work.</param>
    /// <param name="cancel">Stops it.</param>
    public static Task<T> ShowAsync<T>(CommandContext desk, string what, Func<T> work, CancellationToken cancel) =>
        ShowAsync(desk, () => what, () => Task.Run(work, cancel), cancel);

    /// <summary>As above, with how far it is, for example "Comparing batches 120 of 300".</summary>
    /// <param name="desk">Messages go to its error writer, and only when that is a terminal.</param>
    /// <param name="what">What is being done.</param>
    /// <param name="work">The work; tells how many it did, of how many.</param>
    /// <param name="cancel">Stops it.</param>
    public static Task<T> ShowCountAsync<T>(
        CommandContext desk,
        string what,
        Func<IProgress<(int Done, int Of)>, Task<T>> work,
        CancellationToken cancel
    )
    {
        Counted count = new();
        return ShowAsync(desk, () => what + count.Words, () => Task.Run(() => work(count), cancel), cancel);
    }

    private static async Task<T> ShowAsync<T>(CommandContext desk, Func<string> what, Func<Task<T>> work, CancellationToken cancel)
    {
        Task<T> task = work();
        bool terminal = ReferenceEquals(desk.Error, Console.Error) && !Console.IsErrorRedirected;
        for (
            int seconds = 1;
            terminal
                && await Task.WhenAny(task, Task.Delay(s_tick, cancel)).ConfigureAwait(false) != task
                && !cancel.IsCancellationRequested;
            seconds++
        )
        {
            await desk
                .Error.WriteAsync(string.Create(CultureInfo.InvariantCulture, $"\r{what()} … {seconds} s (Ctrl+C stops it)"))
                .ConfigureAwait(false);
        }

        T result = await task.ConfigureAwait(false);
        if (terminal)
        {
            await desk.Error.WriteAsync("\r\u001b[K").ConfigureAwait(false);
        }

        return result;
    }

    /// <summary>Keeps the last count, and calls nobody.</summary>
    private sealed class Counted : IProgress<(int Done, int Of)>
    {
        private (int Done, int Of) _last;

        public string Words => _last.Of > 0 ? string.Create(CultureInfo.InvariantCulture, $" {_last.Done:#,##0} of {_last.Of:#,##0}") : "";

        public void Report((int Done, int Of) value) => _last = value;
    }
}
