using System.Globalization;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Instruments;

/// <summary>Where an instrument hangs.</summary>
public abstract record MeterAddress
{
    private MeterAddress() { }

    /// <summary>For people.</summary>
    public abstract string Words { get; }

    /// <summary>On the network, or behind a program that passes it on.</summary>
    /// <param name="Host">Name or address.</param>
    /// <param name="Port">1 to 65,535.</param>
    public sealed record Tcp(string Host, int Port) : MeterAddress
    {
        /// <summary>The port that instruments usually answer SCPI on. Common practice; from memory.</summary>
        public const int UsualPort = 5025;

        /// <inheritdoc/>
        public override string Words => string.Create(CultureInfo.InvariantCulture, $"{Host}:{Port}");
    }

    /// <summary>On a serial line.</summary>
    /// <param name="Port">"/dev/ttyUSB0", "COM3".</param>
    public sealed record Serial(string Port) : MeterAddress
    {
        /// <inheritdoc/>
        public override string Words => Port;
    }

    /// <summary>On USB, by the test and measurement class.</summary>
    /// <param name="Device">"/dev/usbtmc0".</param>
    public sealed record UsbTmc(string Device) : MeterAddress
    {
        /// <inheritdoc/>
        public override string Words => Device;
    }

    /// <summary>Reads HOST:PORT; without a port it is <see cref="Tcp.UsualPort"/>, unless one is asked for.</summary>
    /// <param name="field">Where it was typed, for messages.</param>
    /// <param name="typed">What was typed.</param>
    /// <param name="portNeeded">True where no port is usual.</param>
    public static ReadOutcome<MeterAddress> ReadTcp(string field, string typed, bool portNeeded = false)
    {
        string text = typed.Trim();
        int colon = text.LastIndexOf(':');
        bool bare = colon < 0 || text.EndsWith(']');
        string host = (bare ? text : text[..colon]).Trim('[', ']');
        int port = Tcp.UsualPort;
        bool isPort = bare ? !portNeeded : CountParser.TryParse(text[(colon + 1)..], 1, 65_535, out port, out _);
        return host.Length > 0 && isPort && !host.Any(char.IsWhiteSpace)
            ? new ReadOutcome<MeterAddress>(new Tcp(host, port), [])
            : new ReadOutcome<MeterAddress>(
                null,
                [
                    new Problem(
                        field,
                        "is not a name and a port",
                        $"\"{text}\"",
                        "HOST:PORT, the port from 1 to 65,535; \"192.168.1.20:5025\""
                    ),
                ]
            );
    }
}
