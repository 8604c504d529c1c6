using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Words;
using TasteVerdict = FermentWatch.Kitchen.Observations.TasteVerdict;

namespace FermentWatch.Kitchen.Tests.Words;

public class ObservationWordsTests
{
    [Fact]
    public void Of_Measurement_SaysHowItWasMade()
    {
        Assert.Equal("pH 3.85 by meter, checked in buffer", ObservationWords.Of(SampleJars.Ph(3.85, SampleJars.Packed)));
        Assert.Equal("pH 4.0 by strip, dark brine, blended", ObservationWords.Of(new PhMeasurement
        {
            Id = Guid.Empty, JarId = Guid.Empty, At = SampleJars.Packed, EnteredAt = SampleJars.Packed, By = "Ada", Ph = 4, Method = PhMethod.Strip,
                Blended = true,
        }));
    }

    [Fact]
    public void Of_EveryKindOfSightingTasteStageAndMethod_HasWords()
    {
        Assert.All(Enum.GetValues<SightingKind>(), kind => Assert.NotEmpty(ObservationWords.Of(kind)));
        Assert.All(Enum.GetValues<TasteVerdict>(), verdict => Assert.NotEmpty(ObservationWords.Of(verdict)));
        Assert.All(Enum.GetValues<JarStage>(), stage => Assert.NotEmpty(ObservationWords.Of(stage)));
        Assert.All(Enum.GetValues<PhMethod>(), method => Assert.NotEmpty(ObservationWords.Of(method)));
    }
}
