using System.Text;
using Coilwright.Workshop.Entry;

namespace Coilwright.Input;

/// <summary>Reads a file that a person named; every way it can fail is said in workshop words.</summary>
public static class InputFile
{
    /// <summary>Longest file read, bytes.</summary>
    public const long Longest = 16_000_000;

    /// <summary>The text of a file; "-" reads standard input.</summary>
    /// <exception cref="WrongInputException">The file is missing, is a folder, cannot be read, is too long, or is not UTF-8 text.</exception>
    public static async Task<string> ReadAsync(string path, CancellationToken cancel)
    {
        if (path == "-")
        {
            return await Console.In.ReadToEndAsync(cancel).ConfigureAwait(false);
        }

        if (Directory.Exists(path))
        {
            throw Refused(path, "this is a folder; a file is needed");
        }

        if (!File.Exists(path))
        {
            throw Refused(path, "there is no such file");
        }

        try
        {
            if (new FileInfo(path).Length > Longest)
            {
                throw Refused(path, "this file is too long to be one of ours", "up to 16 MB");
            }

            byte[] bytes = await File.ReadAllBytesAsync(path, cancel).ConfigureAwait(false);
            string text = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true).GetString(bytes);
            return text.TrimStart('\uFEFF');
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw Refused(path, "this file cannot be read: " + failure.Message);
        }
        catch (DecoderFallbackException)
        {
            throw Refused(path, "this is not text; a file in UTF-8 is needed");
        }
    }

    /// <summary>The value that was read, or an exception that carries every problem.</summary>
    public static T OrRefuse<T>(this ReadOutcome<T> outcome, string path)
        where T : class =>
        outcome is { Ok: true, Value: { } value } ? value : throw new WrongInputException(path, outcome.Problems);

    private static WrongInputException Refused(string path, string message, string? allowed = null) => new(path, [new Problem("", message, Allowed: allowed)]);
}
