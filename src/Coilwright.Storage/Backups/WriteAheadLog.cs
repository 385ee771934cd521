using System.Buffers.Binary;

namespace Coilwright.Storage.Backups;

/// <summary>The log of newest writes that SQLite keeps beside a shop's file, and whether it belongs to that file.</summary>
/// <remarks>
/// A log does not say whose it is. But whoever writes the first page counts in it, one on from what the file had: a log whose last count
/// lies before the file's, or whose first lies more than one after it, was written on top of another state of the file. Where the counts
/// happen to meet, only the database's own check tells a strange log. Places: SQLite's published file format, "The Database Header"
/// (change counter at 24) and "The Write-Ahead Log".
/// </remarks>
internal static class WriteAheadLog
{
    private const int HeaderLength = 32,
        FrameHeaderLength = 24,
        ChangeCounterAt = 24;

    private const uint Magic = 0x377f0682;

    /// <summary>Ending of the log's name, and of its index's.</summary>
    public static readonly IReadOnlyList<string> Endings = ["-wal", "-shm"];

    /// <summary>Length of the log beside a file, bytes; 0 for none.</summary>
    public static long BytesBeside(string path) => new FileInfo(path + "-wal") is { Exists: true } log ? log.Length : 0;

    /// <summary>The log and its index, as far as they lie beside a file.</summary>
    public static IReadOnlyList<string> Beside(string path) => [.. Endings.Select(ending => path + ending).Where(File.Exists)];

    /// <summary>True when the log was certainly written on another state of the file; false when it fits, or nothing tells.</summary>
    public static bool IsForeign(string path)
    {
        if (BytesBeside(path) < HeaderLength)
        {
            return false;
        }

        byte[] before = Head(path + "-wal", HeaderLength);
        uint inFile = BinaryPrimitives.ReadUInt32BigEndian(Head(path, ShopHeader.Length).AsSpan(ChangeCounterAt));
        (uint First, uint Last)? inLog = Counts(path + "-wal");
        bool stood = before.AsSpan().SequenceEqual(Head(path + "-wal", HeaderLength)); // else another began the log anew meanwhile
        return stood && inLog is { } counts && (counts.Last < inFile || counts.First > inFile + 1);
    }

    /// <summary>What is wrong and the cure, in words.</summary>
    public static (string What, string ToDo) Words(string path) =>
        (
            $"the write-ahead log beside it ({path}-wal) does not belong to this file: it was left behind when another file was put in its "
                + "place. The file by itself is sound.",
            $"move {path}-wal and {path}-shm to another folder and open the shop again; entries that stand only in that log belong to the "
                + "file that lay here before"
        );

    /// <summary>Change counts of the first and the last first page that the log holds in what was committed; null for none.</summary>
    private static (uint First, uint Last)? Counts(string log)
    {
        using FileStream file = new(log, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        byte[] header = new byte[HeaderLength];
        bool isLog = file.ReadAtLeast(header, HeaderLength, throwOnEndOfStream: false) == HeaderLength && (Word(header, 0) & ~1u) == Magic;
        if (!isLog || Word(header, 8) is < 512 or > 65536)
        {
            return null;
        }

        bool bigEndian = (Word(header, 0) & 1) == 1;
        (uint, uint) sum = Sum(header.AsSpan(0, HeaderLength - 8), (0, 0), bigEndian);
        if (sum != (Word(header, 24), Word(header, 28)))
        {
            return null;
        }

        byte[] frame = new byte[FrameHeaderLength + Word(header, 8)];
        (uint First, uint Last)? committed = null,
            seen = null;
        while (IsNext(file, frame, header, ref sum, bigEndian))
        {
            if (Word(frame, 0) == 1)
            {
                uint count = Word(frame, FrameHeaderLength + ChangeCounterAt);
                seen = (seen?.First ?? count, count);
            }

            committed = Word(frame, 4) == 0 ? committed : seen; // a frame with the file's size ends a transaction
        }

        return committed;
    }

    /// <summary>Reads a frame; false at the end of what this log holds: what follows is torn, or older than its header.</summary>
    private static bool IsNext(FileStream file, byte[] frame, byte[] header, ref (uint, uint) sum, bool bigEndian)
    {
        if (file.ReadAtLeast(frame, frame.Length, throwOnEndOfStream: false) < frame.Length)
        {
            return false;
        }

        sum = Sum(frame.AsSpan(FrameHeaderLength), Sum(frame.AsSpan(0, 8), sum, bigEndian), bigEndian);
        return frame.AsSpan(8, 8).SequenceEqual(header.AsSpan(16, 8)) && sum == (Word(frame, 16), Word(frame, 20));
    }

    private static (uint, uint) Sum(ReadOnlySpan<byte> data, (uint, uint) from, bool bigEndian)
    {
        (uint s0, uint s1) = from;
        for (int at = 0; at + 8 <= data.Length; at += 8)
        {
            uint x0 = bigEndian ? Word(data, at) : BinaryPrimitives.ReadUInt32LittleEndian(data[at..]),
                x1 = bigEndian ? Word(data, at + 4) : BinaryPrimitives.ReadUInt32LittleEndian(data[(at + 4)..]);
            s0 = unchecked(s0 + x0 + s1);
            s1 = unchecked(s1 + x1 + s0);
        }

        return (s0, s1);
    }

    private static uint Word(ReadOnlySpan<byte> data, int at) => BinaryPrimitives.ReadUInt32BigEndian(data[at..]);

    private static byte[] Head(string path, int length)
    {
        using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        byte[] head = new byte[length];
        file.ReadAtLeast(head, length, throwOnEndOfStream: false);
        return head;
    }
}
