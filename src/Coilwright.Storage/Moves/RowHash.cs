using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;

namespace Coilwright.Storage.Moves;

/// <summary>A hash of rows that does not depend on how a database keeps a value: kind, length, and the value itself.</summary>
internal sealed class RowHash : IDisposable
{
    private const byte Nothing = 0,
        Text = 1,
        Number = 2,
        Whole = 3,
        Flag = 4,
        Id = 5;

    private readonly IncrementalHash _hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);

    /// <summary>Takes a row's values, in the order of the table's columns.</summary>
    public void Add(IEnumerable<object?> row)
    {
        byte[] head = new byte[5];
        foreach (object? value in row)
        {
            (byte kind, byte[] bytes) = Bytes(value);
            head[0] = kind;
            BinaryPrimitives.WriteInt32BigEndian(head.AsSpan(1), bytes.Length);
            _hash.AppendData(head);
            _hash.AppendData(bytes);
        }
    }

    /// <summary>The hash, in hexadecimal digits.</summary>
    public string Done() => Convert.ToHexStringLower(_hash.GetHashAndReset());

    public void Dispose() => _hash.Dispose();

    private static (byte Kind, byte[] Bytes) Bytes(object? value) =>
        value switch
        {
            null => (Nothing, []),
            string text => (Text, Encoding.UTF8.GetBytes(text)),
            double number => (Number, BitConverter.GetBytes(number)),
            long whole => (Whole, BitConverter.GetBytes(whole)),
            bool flag => (Flag, BitConverter.GetBytes(flag)),
            Guid id => (Id, id.ToByteArray()),
            _ => throw new ArgumentException($"{value.GetType().Name} is no kind of value that a shop keeps.", nameof(value)),
        };
}
