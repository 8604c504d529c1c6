namespace FermentWatch.Kitchen.Calendar;

/// <summary>Writes the coming days as a file that calendars read.</summary>
public interface ICalendarFile
{
    /// <summary>Media type of the file.</summary>
    string MediaType { get; }

    /// <summary>Writes the file; the same days give the same bytes.</summary>
    /// <param name="days">What it shows.</param>
    /// <param name="root">Address of the pages; null leaves the links out.</param>
    string Of(ComingDays days, Uri? root);
}
