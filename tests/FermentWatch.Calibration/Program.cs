using FermentWatch.Calibration;
using FermentWatch.Kinetics.Guilds;
using FermentWatch.Reference.Tests.Published;

foreach (PublishedCourse row in PublishedCourses.All)
{
    CourseAnswer answer = CourseAnswer.Of(row, [ModelParameters.Current])[0];
    Console.WriteLine($"{row.Id,-12} {row.Quantity,-24} {row.Celsius,5:0.0} C  day {row.Day,6:0.0}  [{row.Low:0.00}, {row.High:0.00}]  model {answer.Value:0.00}  day of value {answer.Day:0.00}");
}
