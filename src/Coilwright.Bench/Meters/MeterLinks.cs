using System.IO.Ports;
using System.Net.Sockets;
using Coilwright.Workshop.Instruments;

namespace Coilwright.Bench.Meters;

/// <summary>Opens the line to an instrument.</summary>
public static class MeterLinks
{
    private static readonly TimeSpan s_connecting = TimeSpan.FromSeconds(5);

    /// <summary>Opens a line; the profile's first words are not sent yet.</summary>
    /// <param name="address">Where.</param>
    /// <param name="end">What ends a line.</param>
    /// <param name="serial">How a serial line is set.</param>
    /// <param name="cancel">Gives up.</param>
    /// <exception cref="InstrumentException">There is nothing to open.</exception>
    public static async Task<IMeterLink> OpenAsync(MeterAddress address, string end, SerialLine serial, CancellationToken cancel) =>
        address is MeterAddress.UsbTmc usb
            ? OpenUsbTmc(usb, end)
            : await OpenStreamAsync(address, serial, cancel).ConfigureAwait(false) switch
            {
                (Stream stream, IDisposable owner) => new StreamLink(stream, end, owner),
            };

    /// <summary>The bytes of a network connection or a serial line, and what closes them.</summary>
    /// <param name="address">Where; not a USB-TMC device, which has messages and no bytes.</param>
    /// <param name="serial">How a serial line is set.</param>
    /// <param name="cancel">Gives up.</param>
    /// <exception cref="InstrumentException">There is nothing to open.</exception>
    public static async Task<(Stream Stream, IDisposable Owner)> OpenStreamAsync(
        MeterAddress address,
        SerialLine serial,
        CancellationToken cancel
    ) =>
        address switch
        {
            MeterAddress.Tcp tcp => await OpenTcpAsync(tcp, cancel).ConfigureAwait(false),
            MeterAddress.Serial line => OpenSerial(line, serial),
            _ => throw new ArgumentException("a USB-TMC device is no stream of bytes", nameof(address)),
        };

    private static async Task<(Stream, IDisposable)> OpenTcpAsync(MeterAddress.Tcp tcp, CancellationToken cancel)
    {
        TcpClient client = new() { NoDelay = true };
        using CancellationTokenSource late = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        late.CancelAfter(s_connecting);
        try
        {
            await client.ConnectAsync(tcp.Host, tcp.Port, late.Token).ConfigureAwait(false);
            return (client.GetStream(), client);
        }
        catch (Exception failure) when (failure is SocketException or OperationCanceledException)
        {
            client.Dispose();
            cancel.ThrowIfCancellationRequested();
            throw CannotOpen($"nothing answers at {tcp.Words}: is the instrument on, and is this its address?");
        }
    }

    private static (Stream, IDisposable) OpenSerial(MeterAddress.Serial line, SerialLine set)
    {
        SerialPort port = new(line.Port, set.Baud, ParityOf(set.Parity), set.DataBits, set.StopBits == 2 ? StopBits.Two : StopBits.One);
        try
        {
            port.Open();
            port.DiscardInBuffer();
            return (port.BaseStream, port);
        }
        catch (Exception failure) when (IsNotThere(failure))
        {
            port.Dispose();
            throw CannotOpen($"the serial line {line.Port} cannot be opened: is it plugged in, in use elsewhere, or not yours to open?");
        }
    }

    private static UsbTmcLink OpenUsbTmc(MeterAddress.UsbTmc usb, string end)
    {
        try
        {
            return new UsbTmcLink(usb.Device, end);
        }
        catch (Exception failure) when (IsNotThere(failure))
        {
            throw CannotOpen($"the device {usb.Device} cannot be opened: is it plugged in, and yours to open?");
        }
    }

    private static bool IsNotThere(Exception failure) =>
        failure is IOException or UnauthorizedAccessException or ArgumentException or InvalidOperationException or NotSupportedException;

    private static Parity ParityOf(string word) =>
        word switch
        {
            "even" => Parity.Even,
            "odd" => Parity.Odd,
            _ => Parity.None,
        };

    private static InstrumentException CannotOpen(string message) => new(InstrumentTrouble.CannotOpen, message);
}
