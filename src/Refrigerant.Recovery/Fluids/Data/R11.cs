using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-11, trichlorofluoromethane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R11
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-11",
        Name = "trichlorofluoromethane",
        CasNumber = "75-69-4",
        Source = "R.T Jacobsen and S.G. Penoncello and E.W. Lemmon, (1992), A Fundamental Equation for "
            + "Trichlorofluoromethane (R-11), Fluid Phase Equilib., vol. 80, 45-56, doi:10.1016/0378-3812(92)87054-Q",
        MolarMass = 0.137368,
        GasConstant = 8.31451,
        ReducingTemperature = 471.11,
        ReducingMolarDensity = 4032.962,
        CriticalTemperature = 471.06,
        CriticalPressure = 4394000,
        CriticalMolarDensity = 4113.0394269407725,
        AcentricFactor = 0.1887506482528083,
        MinimumTemperature = 162.68,
        MaximumTemperature = 625,
        MaximumPressure = 100000000,
        IdealGas = new IdealHelmholtz(
            logTau: 3.0056492324863404,
            tauLogTau: 0,
            powers: new double[,]
            {
                { -0.05250225521407755, -1 },
            },
            planckEinstein: new double[,]
            {
                { 1, 3.313613168898983 },
                { 2, 2.586756086688884 },
                { 1, 1.634512228566577 },
                { 2, 1.215500498821931 },
                { 1, 1.06738046316147 },
                { 2, 0.7360191462715714 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 1.25993633881, 1, 0.5, 0 },
                { -2.60818574641, 1, 1.5, 0 },
                { 0.00982122542463, 1, 5, 0 },
                { -1.06085385839, 2, 1, 0 },
                { 1.2282036351, 2, 1.5, 0 },
                { 0.118000776439, 3, 0, 0 },
                { -0.000698956926463, 3, 5, 0 },
                { -0.0355428373358, 4, 2, 0 },
                { 0.00197169579643, 4, 3, 0 },
                { -0.00848363012252, 5, 1, 0 },
                { 0.00417997567653, 5, 2, 0 },
                { -0.000242772533848, 5, 4, 0 },
                { 0.00313371368974, 6, 1, 0 },
                { 3.96182646586E-06, 8, 4, 0 },
                { 0.339736319502, 1, 5, 2 },
                { -0.203010634531, 1, 6, 2 },
                { -0.1060178599, 2, 3.5, 2 },
                { 0.45156488259, 2, 5.5, 2 },
                { -0.339265767612, 2, 7.5, 2 },
                { 0.114338523359, 3, 3, 2 },
                { 0.0319537833995, 4, 2.5, 2 },
                { 0.036790825978, 6, 5, 2 },
                { -9.61768948364E-06, 10, 1.5, 2 },
                { 0.00246717966418, 3, 11, 4 },
                { -0.00167030256045, 5, 9, 6 },
                { 0.00240710110806, 8, 13, 6 },
                { 0.00156214678738, 9, 5, 6 },
                { -0.00323352596704, 9, 9, 6 },
            },
        },
    };
}
