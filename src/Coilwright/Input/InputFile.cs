using System.Globalization;
using System.Text;
using Coilwright.Workshop.Entry;

namespace Coilwright.Input;

/// <summary>Reads a file that a person named; every way it can fail is said in workshop words.</summary>
public static class InputFile
{
    /// <summary>Longest file read, bytes.</summary>
    public const long Longest = 16_000_000;

    /// <summary>The text of a file; "-" reads standard input.</summary>
    /// <exception cref="WrongInputException">The file is missing, is no regular file, cannot be read, is too long, or is not UTF-8
    /// text.</exception>
    public static async Task<string> ReadAsync(string path, CancellationToken cancel)
    {
        if (path == "-")
        {
            // Standard input cannot be given up from inside a read; waiting for it can.
            return await Task.Run(() => ReadInput(Console.In), cancel).WaitAsync(cancel).ConfigureAwait(false);
        }

        byte[] bytes = await ReadBytesAsync(path, Longest, cancel).ConfigureAwait(false);
        try
        {
            return new UTF8Encoding(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true).GetString(bytes).TrimStart('\uFEFF');
        }
        catch (DecoderFallbackException)
        {
            throw Refused(path, "this is not text; a file in UTF-8 is needed");
        }
    }

    /// <summary>
    /// The bytes of a regular file. Pipes and devices are not opened: they state no length, and opening one can wait for ever.
    /// </summary>
    /// <param name="path">Its name.</param>
    /// <param name="longest">Most bytes read.</param>
    /// <param name="cancel">Gives up.</param>
    /// <exception cref="WrongInputException">The file is missing, is no regular file, cannot be read, or is too long.</exception>
    public static async Task<byte[]> ReadBytesAsync(string path, long longest, CancellationToken cancel)
    {
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
            long length = new FileInfo(path).ResolveLinkTarget(returnFinalTarget: true) is FileInfo target
                ? target.Length
                : new FileInfo(path).Length;
            if (length == 0)
            {
                throw Refused(
                    path,
                    "this is empty, or a pipe or device instead of a file",
                    "a file with something in it; - reads standard input"
                );
            }

            if (length > longest)
            {
                throw TooLong(path, longest);
            }

            await using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            byte[] bytes = new byte[length];
            int read = await file.ReadAtLeastAsync(bytes, bytes.Length, throwOnEndOfStream: false, cancel).ConfigureAwait(false);
            return bytes[..read];
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw Refused(path, "this file cannot be read");
        }
    }

    private static string ReadInput(TextReader input)
    {
        StringBuilder text = new();
        char[] part = new char[8192];
        for (int read = input.Read(part, 0, part.Length); read > 0; read = input.Read(part, 0, part.Length))
        {
            text.Append(part, 0, read);
            if (text.Length > Longest)
            {
                throw TooLong("standard input", Longest);
            }
        }

        return text.ToString().TrimStart('\uFEFF');
    }

    private static WrongInputException TooLong(string path, long longest) =>
        Refused(path, "this is too long to be one of ours", string.Create(CultureInfo.InvariantCulture, $"up to {longest / 1_000_000} MB"));

    /// <summary>The value that was read, or an exception that carries every problem.</summary>
    public static T OrRefuse<T>(this ReadOutcome<T> outcome, string path)
        where T : class => outcome is { Ok: true, Value: { } value } ? value : throw new WrongInputException(path, outcome.Problems);

    /// <summary>The value, or an exception whose problems name the options that the fields of the question came from.</summary>
    public static T OrRefuseOptions<T>(this ReadOutcome<T> outcome, Func<string, string> option)
        where T : class =>
        outcome is { Ok: true, Value: { } value }
            ? value
            : throw new WrongInputException("", [.. outcome.Problems.Select(problem => problem with { Field = option(problem.Field) })]);

    private static WrongInputException Refused(string path, string message, string? allowed = null) =>
        new(path, [new Problem("", message, Allowed: allowed)]);
}
