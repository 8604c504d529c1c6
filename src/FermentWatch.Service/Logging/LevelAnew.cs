using System.Runtime.InteropServices;
using FermentWatch.Service.Settings;
using Serilog.Core;

namespace FermentWatch.Service.Logging;

/// <summary>Takes the level of the log from the settings anew at SIGHUP (<c>systemctl reload</c>),
/// so that trouble can be watched as it happens.</summary>
/// <param name="level">What is written from now on.</param>
/// <param name="logger">Where it is said.</param>
internal sealed partial class LevelAnew(LoggingLevelSwitch level, ILogger<LevelAnew> logger)
{
    /// <summary>Listens until it is disposed of; null on a system without such a signal.</summary>
    /// <param name="gather">Gathers the settings.</param>
    public IDisposable? Listen(Func<SettingsReading> gather) => OperatingSystem.IsWindows() ? null
        : PosixSignalRegistration.Create(PosixSignal.SIGHUP, signal =>
        {
            // Left to itself the signal ends the process.
            signal.Cancel = true;
            Take(gather());
        });

    private void Take(SettingsReading reading)
    {
        if (reading.Errors.Count > 0)
        {
            LogRefused(level.MinimumLevel.ToString(), reading.Errors[0]);
            return;
        }
        level.MinimumLevel = reading.Settings.Log.Level;
        LogTaken(level.MinimumLevel.ToString());
    }

    [LoggerMessage(3021, LogLevel.Warning, "The log is written from {Level} on from now.")]
    private partial void LogTaken(string level);

    [LoggerMessage(3022, LogLevel.Warning, "The log is written from {Level} on, as before: {Error}")]
    private partial void LogRefused(string level, string error);
}
