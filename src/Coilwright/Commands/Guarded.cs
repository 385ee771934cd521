using Coilwright.Input;
using Coilwright.Workshop.Backups;

namespace Coilwright.Commands;

/// <summary>Work with backups whose failure is told as a problem with an option.</summary>
internal static class Guarded
{
    /// <exception cref="WrongInputException">It failed; carries why.</exception>
    public static async Task<T> RunAsync<T>(string option, Func<Task<T>> work)
    {
        try
        {
            return await work().ConfigureAwait(false);
        }
        catch (BackupException failed)
        {
            throw WrongInputException.About(option, failed.Message);
        }
    }
}
