using CsCheck;
using Tamis.Physics;

namespace Tamis.Tests.Physics.Migration;

public class WaterCourseTests
{
    [Fact]
    public void Of_AnyStack_ConservesWater() =>
        Gen.Select(Gen.Double[0.1, 0.6], Gen.Double[0.5, 0.93], Gen.Double[0.5, 12], Gen.Double[-13, -9], Gen.Double[0, 1], Gen.Double[0.01, 60]).Sample((dry, wet, thickness, power, film, days) =>
        {
            var stack = WaterStack.Of(
                [Stacks.Shell(dry), Stacks.Sponge(wet, thickness, Math.Pow(10, power)), WaterLayer.OfActivity("syrup", MigrationData.Kit.Isotherm("sucrose, amorphous"), 4, 1.3, wet, Stacks.Diffusivity(1e-10))],
                [MigrationData.Kit.Film("cocoa butter", film, 0.02), FatFilm.None], 20);
            var course = WaterCourse.Of(stack, days, new(8, 30));
            var before = course.WaterGramsPerSquareCentimetre(0);
            return Enumerable.Range(0, course.Days.Count).All(i => Math.Abs(course.WaterGramsPerSquareCentimetre(i) - before) <= 1e-9 * before);
        }, iter: 40);

    [Fact]
    public void Of_AStackInAir_GainsWhatComesFromIt()
    {
        var course = WaterCourse.Of(WaterStack.Of([Stacks.Shell(), Stacks.Sponge()], [], 20) with { Over = SurroundingAir.Of(45, 0.003), Under = SurroundingAir.Of(60, 0.003) }, 20);
        var before = course.WaterGramsPerSquareCentimetre(0);

        Assert.All(Enumerable.Range(0, course.Days.Count), i => Assert.Equal(before + course.FromAirGramsPerSquareCentimetre[i], course.WaterGramsPerSquareCentimetre(i), 10));
        Assert.True(course.FromAirGramsPerSquareCentimetre[^1] < -0.01);
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(4)]
    [InlineData(30)]
    public void Of_OneLayerInAir_FollowsTheSeries(double days)
    {
        // Crank 1975, plane sheet with one face held at a fixed content and the other closed.
        const double Thickness = 10, Diffusivity = 1e-10;
        var sponge = WaterStack.Of([Stacks.Sponge(0.85, Thickness, Diffusivity)], [], 20) with { Over = SurroundingAir.Of(60, double.PositiveInfinity) };
        var layer = WaterCourse.Of(sponge, days, new(80, 3000)).Layers[0];

        var final = sponge.Layers[0].Isotherm.WaterGramsPerGramDry(0.60);
        var done = (layer.WaterGramsPerGramDry[^1] - layer.WaterGramsPerGramDry[0]) / (final - layer.WaterGramsPerGramDry[0]);

        Assert.Equal(DiffusionTimes.DoneShare(days / (DiffusionTimes.Seconds(Thickness, Diffusivity) / 86400)), done, 2e-4);
    }

    [Fact]
    public void Of_TwoDeepLayers_MeetAtTheActivityOfTheirStorage()
    {
        // Carslaw and Jaeger 1959, two half-spaces in contact: the face comes at once to the mean weighed by √(diffusivity) × storage.
        var dry = WaterLayer.OfActivity("dry", Stacks.Straight(0.2), 10, 1.0, 0.2, Stacks.Diffusivity(1e-11));
        var wet = WaterLayer.OfActivity("wet", Stacks.Straight(0.8), 10, 1.0, 0.8, Stacks.Diffusivity(9e-11));
        var (storesDry, storesWet) = (Math.Sqrt(1e-11) * dry.DryGramsPerMillilitre * 0.2, Math.Sqrt(9e-11) * wet.DryGramsPerMillilitre * 0.8);

        var course = WaterCourse.Of(WaterStack.Of([dry, wet], [], 20), 0.5, new(400, 400));

        var expected = (storesDry * 0.2 + storesWet * 0.8) / (storesDry + storesWet);
        Assert.Equal(expected, course.Of("dry").UpperWaterActivity[^1], 2e-4);
        Assert.Equal(expected, course.Of("wet").LowerWaterActivity[^1], 2e-4);
        // And what has passed grows with the root of time: 2·storage·(face − start)·√(time/π).
        var gained = course.Of("dry").WaterGramsPerSquareCentimetre(course.Days.Count - 1) - course.Of("dry").WaterGramsPerSquareCentimetre(0);
        Assert.Equal(2 * storesDry * (expected - 0.2) * Math.Sqrt(0.5 * 86400 / Math.PI) * 100, gained, 1e-4);
    }

    [Fact]
    public void Of_WhereLayersTouch_FacesHaveOneActivity()
    {
        var course = WaterCourse.Of(Stacks.Tart(FatFilm.None), 10);

        Assert.All(course.Days.Index().Skip(1), day => Assert.Equal(course.Of("shell").UpperWaterActivity[day.Index], course.Of("sponge").LowerWaterActivity[day.Index], 9));
    }

    [Fact]
    public void Of_AFilmBetween_PassesItsSteadyFlow()
    {
        // Thick layers that spread water fast stay as they are, so the film alone decides: Fick's first law.
        var film = MigrationData.Kit.Film("cocoa butter", 0.4);
        var stack = WaterStack.Of([Stacks.Shell(0.3, 400, 1e-4), Stacks.Sponge(0.85, 400, 1e-4)], [film], 20);
        var course = WaterCourse.Of(stack, 1, new(8, 20));

        var gained = course.Of("shell").WaterGramsPerSquareCentimetre(course.Days.Count - 1) - course.Of("shell").WaterGramsPerSquareCentimetre(0);
        var steady = FatFilm.FluxKilogramsPerSquareMetreSecond(1e-14, 0.4, 0.55, 20) * 86400 / 10;
        Assert.Equal(1, gained / steady, 3);
    }

    [Fact]
    public void Of_ASeal_StopsAllWater()
    {
        var course = WaterCourse.Of(Stacks.Tart(FatFilm.Seal), 30);

        Assert.Equal(0.25, course.Of("shell").MeanWaterActivity[^1], 12);
    }

    [Fact]
    public void Of_AFilmOfNoThickness_IsNoFilm()
    {
        var none = WaterCourse.Of(Stacks.Tart(FatFilm.None), 10).Of("shell").MeanWaterActivity;
        var thin = WaterCourse.Of(Stacks.Tart(MigrationData.Kit.Film("cocoa butter", 0)), 10).Of("shell").MeanWaterActivity;
        var bare = WaterCourse.Of(Stacks.Tart(MigrationData.Kit.Film("cocoa butter", 0.5, bareShare: 1)), 10).Of("shell").MeanWaterActivity;

        Assert.Equal(none, thin);
        Assert.InRange(Stacks.Most(none.Zip(bare, (a, b) => a - b)), 0, 1e-9);
    }

    [Fact]
    public void Of_MoreBareArea_LetsMoreWaterThrough()
    {
        double[] wet = [.. new[] { 0, 0.01, 0.1, 0.5, 1 }.Select(bare => WaterCourse.Of(Stacks.Tart(MigrationData.Kit.Film("cocoa butter", 0.5, bare)), 5).Of("shell").MeanWaterActivity[^1])];

        Assert.All(wet.Zip(wet.Skip(1)), pair => Assert.True(pair.First < pair.Second));
    }

    [Fact]
    public void Of_LongEnough_ComesToTheEquilibrium()
    {
        var stack = WaterStack.Of([Stacks.Shell(diffusivity: 1e-10), Stacks.Sponge()], [], 20);
        var course = WaterCourse.Of(stack, 400);

        Assert.All(course.Layers, layer => Assert.Equal(stack.Equilibrium.WaterActivity.Value, layer.MeanWaterActivity[^1], 6));
    }

    [Fact]
    public void Of_LayersTurnedOver_IsTheSame()
    {
        var film = MigrationData.Kit.Film("dark chocolate", 0.3);
        var up = WaterCourse.Of(WaterStack.Of([Stacks.Shell(), Stacks.Sponge()], [film], 20), 8);
        var down = WaterCourse.Of(WaterStack.Of([Stacks.Sponge(), Stacks.Shell()], [film], 20), 8);

        Assert.InRange(Stacks.Most(up.Of("shell").MeanWaterActivity.Zip(down.Of("shell").MeanWaterActivity, (a, b) => a - b)), 0, 1e-9);
    }

    [Fact]
    public void Of_AnyTime_StaysBetweenTheDriestAndTheWettest()
    {
        var course = WaterCourse.Of(Stacks.Tart(FatFilm.None), 30, new(24, 100) { ProfileDays = [0, 0.001, 1, 5, 30] });

        Assert.All(course.Profiles.SelectMany(profile => profile.WaterActivity), activity => Assert.InRange(activity, 0.25 - 1e-12, 0.85 + 1e-12));
        Assert.Equal([0, 0.001, 1, 5, 30], course.Profiles.Select(profile => profile.Days));
    }

    // Backward Euler: half the step, half the error. Finite volumes with the faces solved: half the cell, a quarter of it.
    [Theory]
    [InlineData(true, 0.9, 1.2)]
    [InlineData(false, 1.8, 2.2)]
    public void Of_FinerSteps_ConvergeAtTheirOrder(bool inTime, double low, double high)
    {
        double Uptake(int times) => WaterCourse.Of(WaterStack.Of([Stacks.Shell(diffusivity: 2e-11), Stacks.Sponge()], [MigrationData.Kit.Film("cocoa butter", 0.1)], 20), 6,
            inTime ? new(12, 20 * times) : new(4 * times, 40)).Of("shell").WaterGramsPerGramDry[^1];

        var (coarse, middle, fine) = (Uptake(1), Uptake(2), Uptake(4));

        Assert.InRange(Math.Log2((middle - coarse) / (fine - middle)), low, high);
    }

    [Theory]
    [InlineData(0, 24, 400, "more than 0 days, found 0")]
    [InlineData(double.NaN, 24, 400, "more than 0 days")]
    [InlineData(5, 1, 400, "from 2 to 1000 cells, found 1")]
    [InlineData(5, 24, 0, "from 1 to 1000000 steps, found 0")]
    public void Of_OutOfRange_IsRefusedInASentence(double days, int cells, int steps, string sentence) =>
        Assert.Contains(sentence, Assert.Throws<ArgumentException>(() => WaterCourse.Of(Stacks.Tart(FatFilm.None), days, new(cells, steps))).Message, StringComparison.Ordinal);

    [Fact]
    public void Of_AProfileBeyondTheTime_IsRefused() =>
        Assert.Contains("within the 5 days", Assert.Throws<ArgumentException>(() => WaterCourse.Of(Stacks.Tart(FatFilm.None), 5, new() { ProfileDays = [9] })).Message, StringComparison.Ordinal);

    [Fact]
    public void Stack_ThatDoesNotFit_NamesAllThatIsWrong()
    {
        var message = Assert.Throws<ArgumentException>(() => WaterStack.Of([Stacks.Shell(), Stacks.Shell()], [FatFilm.None, FatFilm.Seal], 400)).Message;

        Assert.Contains("2 layers are called shell", message, StringComparison.Ordinal);
        Assert.Contains("1 places between them, but 2 films", message, StringComparison.Ordinal);
        Assert.Contains("found 400", message, StringComparison.Ordinal);
    }

    [Fact]
    public void Layer_ThatCannotBe_NamesAllThatIsWrong()
    {
        var message = Assert.Throws<ArgumentException>(() => WaterLayer.OfWater("shell", MigrationData.Kit.Isotherm("sponge"), -3, 0, 140, Stacks.Diffusivity(0))).Message;

        Assert.Equal("The layer shell cannot be: its thickness is above 0 mm, found -3; its density is above 0 g/mL, found 0; its diffusivity is above 0 m²/s, found 0; its water is from 0 to below 100 %, found 140.", message);
    }

    [Fact]
    public void Layer_OfWater_KeepsItsDryMatterAndWater()
    {
        var layer = WaterLayer.OfWater("sponge", MigrationData.Kit.Isotherm("sponge"), 10, 0.4, 20, Stacks.Diffusivity(1e-10));

        Assert.Equal(0.32, layer.DryGramsPerSquareCentimetre, 12);
        Assert.Equal(0.08, layer.Holder.WaterGrams, 12);
        Assert.Equal(0.25, layer.WaterGramsPerGramDry, 12);
    }
}
