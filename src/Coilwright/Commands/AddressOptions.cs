using System.CommandLine;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Instruments;

namespace Coilwright.Commands;

/// <summary>Where an instrument or a counter hangs.</summary>
/// <param name="port">What is said of the network port.</param>
/// <param name="usb">True where a USB device is possible.</param>
internal sealed class AddressOptions(string port, bool usb = true)
{
    private readonly Option<string?> _tcp = new("--tcp") { Description = $"On the network; port {port}", HelpName = "HOST:PORT" };
    private readonly Option<string?> _serial = new("--serial") { Description = "On a serial line: /dev/ttyUSB0, COM3", HelpName = "PORT" };
    private readonly Option<string?> _usbTmc = new("--usbtmc") { Description = "On USB: /dev/usbtmc0", HelpName = "DEVICE" };

    /// <summary>Adds them to a command.</summary>
    public void AddTo(Command command)
    {
        command.Add(_tcp);
        command.Add(_serial);
        if (usb)
        {
            command.Add(_usbTmc);
        }
    }

    /// <summary>The address; no value and no problem when none was given.</summary>
    public ReadOutcome<MeterAddress> Read(ParseResult parsed)
    {
        Option<string?>[] options = usb ? [_tcp, _serial, _usbTmc] : [_tcp, _serial];
        Option<string?>[] given = [.. options.Where(option => parsed.GetValue(option) is not null)];
        if (given.Length > 1)
        {
            string names = string.Join(" and ", given.Select(option => option.Name));
            return Wrong(names, "one thing hangs in one place: give one of them");
        }

        if (given.Length == 0)
        {
            return new ReadOutcome<MeterAddress>(null, []);
        }

        string typed = parsed.GetValue(given[0])!.Trim();
        if (typed.Length == 0)
        {
            return Wrong(given[0].Name, "nothing was entered");
        }

        if (given[0] == _tcp)
        {
            return MeterAddress.ReadTcp("--tcp", typed, portNeeded: !usb);
        }

        return new ReadOutcome<MeterAddress>(given[0] == _serial ? new MeterAddress.Serial(typed) : new MeterAddress.UsbTmc(typed), []);
    }

    private static ReadOutcome<MeterAddress> Wrong(string option, string message) => new(null, [new Problem(option, message)]);
}
