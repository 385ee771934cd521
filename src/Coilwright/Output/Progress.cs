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
    public static async Task<T> ShowAsync<T>(CommandContext desk, string what, Func<T> work, CancellationToken cancel)
    {
        Task<T> task = Task.Run(work, cancel);
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
                .Error.WriteAsync(string.Create(CultureInfo.InvariantCulture, $"\r{what} … {seconds} s (Ctrl+C stops it)"))
                .ConfigureAwait(false);
        }

        T result = await task.ConfigureAwait(false);
        if (terminal)
        {
            await desk.Error.WriteAsync("\r\u001b[K").ConfigureAwait(false);
        }

        return result;
    }
}
