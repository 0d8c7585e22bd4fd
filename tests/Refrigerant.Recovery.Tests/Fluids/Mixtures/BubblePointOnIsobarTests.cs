using Refrigerant.Recovery.Fluids;
using Xunit;

namespace Refrigerant.Recovery.Tests.Fluids.Mixtures;

/// <summary>The states on an isobar where its phases change, to the last digit of the pressure: those of the saturation curves.</summary>
public class BubblePointOnIsobarTests
{
    [Theory]
    [InlineData("R-410A")]
    [InlineData("R-404A")]
    [InlineData("R-507A")]
    [InlineData("R-407C")]
    [InlineData("R-448A")]
    public void Bubble_and_dew_point_have_states_by_enthalpy_and_by_entropy(string designation)
    {
        PropertyModel model = Fluid.Get(designation).Model;
        for (double t = 230; t < 315; t += 4.5)
        {
            SaturationPoint saturation = model.SaturationAtTemperature(t);
            foreach (StatePoint point in new[] { saturation.Bubble, saturation.Dew })
            {
                foreach (double share in new[] { 1 - 3e-13, 1 - 3e-15, 1, 1 + 3e-15, 1 + 3e-13 })
                {
                    double p = share * point.Pressure;
                    Assert.Equal(point.Temperature, model.StateAtEnthalpy(p, point.Enthalpy).Temperature, 1e-6);
                    Assert.Equal(point.Temperature, model.StateAtEntropy(p, point.Entropy).Temperature, 1e-6);
                }
            }
        }
    }
}
