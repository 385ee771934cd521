using System.Text;

namespace Coilwright.Input;

/// <summary>A password as it is typed: unseen at a terminal, a line where another program writes it.</summary>
internal static class TypedSecret
{
    /// <summary>Asks, and reads to the end of the line.</summary>
    /// <param name="desk">Where the question stands.</param>
    /// <param name="question">The question.</param>
    /// <param name="cancel">Gives up.</param>
    public static async Task<string> ReadAsync(CommandContext desk, string question, CancellationToken cancel)
    {
        if (desk.Input is { } given)
        {
            return await given.ReadLineAsync(cancel).ConfigureAwait(false) ?? "";
        }

        if (Console.IsInputRedirected)
        {
            return await Task.Run(Console.In.ReadLine, cancel).WaitAsync(cancel).ConfigureAwait(false) ?? "";
        }

        await desk.Error.WriteAsync(question).ConfigureAwait(false);
        StringBuilder typed = new();
        while (Console.ReadKey(intercept: true) is { Key: not ConsoleKey.Enter } key)
        {
            if (key.Key == ConsoleKey.Backspace)
            {
                typed.Length = Math.Max(0, typed.Length - 1);
            }
            else if (!char.IsControl(key.KeyChar))
            {
                typed.Append(key.KeyChar);
            }
        }

        await desk.Error.WriteLineAsync().ConfigureAwait(false);
        return typed.ToString();
    }
}
