using Coilwright.Bench;
using Coilwright.Workshop.Entry;

namespace Coilwright.Input;

/// <summary>Sound files that a person named.</summary>
internal static class SoundFile
{
    /// <summary>Longest file read, bytes: what a person may name by mistake is told by its length, not by its size.</summary>
    private const long Longest = 2_000_000_000;

    /// <summary>Reads one.</summary>
    /// <exception cref="WrongInputException">It is missing, too long, or no sound.</exception>
    public static async Task<WaveFile> ReadAsync(string path, CancellationToken cancel) =>
        WaveFile.Read(await InputFile.ReadBytesAsync(path, Longest, cancel).ConfigureAwait(false)).OrRefuse(path);

    /// <summary>Writes one whole, or leaves what stood there.</summary>
    /// <exception cref="WrongInputException">It cannot be written.</exception>
    public static async Task WriteAsync(string path, byte[] wave, CancellationToken cancel)
    {
        string making = path + ".part";
        try
        {
            await File.WriteAllBytesAsync(making, wave, cancel).ConfigureAwait(false);
            File.Move(making, path, overwrite: true);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            if (File.Exists(making))
            {
                File.Delete(making);
            }

            throw new WrongInputException(path, [new Problem("", "this file cannot be written: " + failure.Message)]);
        }
    }
}
