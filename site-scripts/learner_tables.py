"""What a teacher expects on a paper of mechanics or circuits: formulas, forms, mistakes, laws, in tables of its own.

Nothing here is taken from ``calc``: formulas and mistakes are those of the trade (common practice, no source), written
in the names of the boxes a reader sees, so that ``learner_workings.py`` can hold the booklet against them.

A line of a part: ``name | unit | formula | other forms | principle | mistakes``. ``;`` parts forms and mistakes.
A mistake is ``formula ~ words``: one of the words (a pattern) has to stand in what the learner is told. ``R`` after the
unit: answered as a size with a direction, the two words parted by ``/`` (for a value above and below zero).
"""

from __future__ import annotations

# question: (conditions on boxes, {part: lines}); several lines of a part are its values on the way, the asked one last
type Table = dict[str, list[tuple[dict[str, str], dict[str, str]]]]

ACROSS = "presses|surface|weight"
ALONG = "along"
RL = "R to the right/to the left"
UD = "R upwards/downwards"
SLOPE = "R up the slope/down the slope"
SIGN = "R positive/negative"

STAGE = {
    "normal": (
        f"N|N|m*g - P*sin(phi)|N + P*sin(phi) = m*g;N + P*sin(phi) - m*g = 0|ΣFy = 0|m*g ~ {ACROSS}"
        ";m*g + P*sin(phi) ~ up|lift|lighten|add|sign|subtract;m*g - P*cos(phi) ~ cos|sin;m - P*sin(phi) ~ g"
    ),
    "along": f"D|N {RL}|P*cos(phi)||ΣFx|P ~ cos|along;P*sin(phi) ~ cos|sin",
    "limit": "f_smax|N|mu_s*N|||mu_k*N ~ static|slid|µ|μ|rest",
}
QUESTIONS: Table = {
    "forces.crew": [
        (
            {},
            STAGE
            | {
                "least": (
                    "P_min|N|mu_s*m*g/(cos(phi) + mu_s*sin(phi))"
                    "|P_min*cos(phi) = mu_s*(m*g - P_min*sin(phi))||mu_s*m*g/cos(phi) ~ normal|press|surface|sin|left"
                    ";mu_k*m*g/(cos(phi) + mu_k*sin(phi)) ~ static|slid|µ|μ"
                )
            },
        )
    ],
    "forces.moves": [({"how": "pull", "theta": "0"}, STAGE)],
    "forces.level": [
        (
            {"how": "pull", "state": "slides", "find": "a"},
            {
                "find": (
                    f"N|N|m*g - P*sin(phi)|N + P*sin(phi) = m*g||m*g ~ {ACROSS}"
                    ";m*g + P*sin(phi) ~ up|lift|lighten|sign|subtract|add;m*g - P*cos(phi) ~ cos|sin\n"
                    "f|N|mu*N|||\n"
                    "a|m·s⁻² R forwards/backwards|(P*cos(phi) - f)/m|P*cos(phi) - f = m*a|Fnet = ma"
                    "|(P*cos(phi) + f)/m ~ oppos|against;(P - f)/m ~ cos|along;P*cos(phi)/m ~ friction|left|f"
                )
            },
        ),
        (
            {"how": "push", "state": "slides", "find": "a"},
            {
                "find": (
                    f"N|N|m*g + P*sin(phi)|N = P*sin(phi) + m*g||m*g ~ {ACROSS};m*g - P*sin(phi) ~"
                    " down|press|add|sign\nf|N|mu*N|||\na|m·s⁻² R forwards/backwards|(P*cos(phi) - f)/m|P*cos(phi) - f"
                    " = m*a|Fnet = ma|(P*cos(phi) + f)/m ~ oppos|against;(P - f)/m ~ cos|along"
                )
            },
        ),
    ],
    "forces.slope": [
        (
            {"how": "pull", "motion": "up", "find": "a"},
            {
                "find": (
                    "N|N|m*g*cos(theta) - P*sin(phi)|N + P*sin(phi) = m*g*cos(theta)||m*g ~"
                    f" {ACROSS}|cos;m*g*sin(theta) - P*sin(phi) ~ cos|sin;m*g*cos(theta) ~"
                    " up|lift|lighten|P|pull\nf|N|mu*N|||\na|m·s⁻² R forwards/backwards|(P*cos(phi) - m*g*sin(theta) -"
                    " f)/m|P*cos(phi) - m*g*sin(theta) - f = m*a|Fnet = ma|(P*cos(phi) - m*g*sin(theta) + f)/m ~"
                    " oppos|against;(P - m*g*sin(theta) - f)/m ~ cos|along;(P*cos(phi) - f)/m ~ weight|slope|g|left"
                )
            },
        )
    ],
    "forces.slipping": [({"find": "theta"}, {"find": "theta|°|atan(mu_s)|tan(theta) = mu_s||asin(mu_s) ~ tan|sin"})],
    "forces.strings": [
        (
            {"find": "T1"},
            {
                "find": (
                    "w|N|m*g||Fg = mg|m ~ g\nT1|N|w*cos(beta)/sin(alpha + beta)|T1*sin(alpha + beta) = w*cos(beta)|"
                    "|w*sin(beta)/sin(alpha + beta) ~ cos|sin;w*cos(alpha)/sin(alpha + beta) ~ other|β|right"
                ),
            },
        )
    ],
    "forces.ramp": [
        (
            {},
            {
                "normal": (
                    f"N|N|m*g*cos(theta)|N - m*g*cos(theta) = 0|ΣFy = 0|m*g ~ {ACROSS}|cos"
                    ";m*g*sin(theta) ~ cos|sin;m*cos(theta) ~ g"
                ),
                "friction": "f|N|mu_k*N||fk = µkN|mu_s*N ~ slid|kinetic|µ|μ",
                "slows": (
                    f"a|m·s⁻² {SLOPE}|-(m*g*sin(theta) + f)/m|-m*g*sin(theta) - f = m*a|Fnet = ma"
                    "|-(m*g*sin(theta) - f)/m ~ oppos|against|down;-m*g*sin(theta)/m ~ friction|f"
                ),
                "distance": "d|m|-u**2/(2*a)|0**2 = u**2 + 2*a*d|vf² = vi² + 2aΔx|-u**2/a ~ 2|half;-u/(2*a) ~ square",
                "part": f"F_gpar|N {SLOPE}|-m*g*sin(theta)|||-m*g*cos(theta) ~ sin|cos;-m*g ~ sin|part",
                "limit": "f_smax|N|mu_s*N|||mu_k*N ~ static|rest|µ|μ",
            },
        )
    ],
    "forces.lantern": [
        (
            {},
            {
                "weight": "w|N|m*g||Fg = mg|m ~ g",
                "left": (
                    "T1|N|w*cos(beta)/sin(alpha + beta)|T1*sin(alpha + beta) = w*cos(beta)|ΣFx = 0"
                    "|w*sin(beta)/sin(alpha + beta) ~ cos|sin;w*cos(alpha)/sin(alpha + beta) ~ other|β|right"
                ),
                "right": (
                    "T2|N|T1*cos(alpha)/cos(beta)|T2*cos(beta) = T1*cos(alpha)|ΣFx = 0"
                    "|T1*cos(beta)/cos(alpha) ~ other|angle|side|divid|upside;T1*sin(alpha)/sin(beta) ~ cos|sin"
                ),
            },
        )
    ],
    "newton.row": [
        (
            {"find": "a"},
            {
                "find": (
                    "f_1|N|mu*m1*g||fk = µkN|\nf_2|N|mu*m2*g|||\na|m·s⁻²|(P - f_1 - f_2)/(m1 + m2)|P - f_1 - f_2 = (m1"
                    " + m2)*a|Fnet = ma|(P - f_1)/(m1 + m2) ~ friction|each|f;P/(m1 + m2) ~ friction|each;(P - f_1 -"
                    " f_2)/m2 ~ every|both|all|m"
                )
            },
        ),
        (
            {"find": "T"},
            {
                "find": (
                    "f_1|N|mu*m1*g||fk = µkN|\nf_2|N|mu*m2*g|||\na|m·s⁻²|(P - f_1 - f_2)/(m1 + m2)|P - f_1 - f_2 = (m1"
                    " + m2)*a|Fnet = ma|P/(m1 + m2) ~ friction|each\nT|N|m1*a + f_1|T - f_1 = m1*a|Fnet = ma|m1*a ~"
                    " friction|f;P ~ pull|P|accelerat|string"
                )
            },
        ),
    ],
    "newton.contact": [
        (
            {"find": "a"},
            {
                "find": (
                    "f_1|N|mu*m1*g||fk = µkN|\nf_2|N|mu*m2*g|||\na|m·s⁻²|(P - f_1 - f_2)/(m1 + m2)|P - f_1 - f_2 = (m1"
                    " + m2)*a|Fnet = ma|(P - f_1)/(m1 + m2) ~ friction|each|f;P/(m1 + m2) ~ friction|each;(P - f_1 -"
                    " f_2)/m1 ~ every|both|all|m"
                )
            },
        )
    ],
    "newton.edge": [
        (
            {"find": "a"},
            {
                "find": (
                    "f|N|mu*m1*g||fk = µkN|\na|m·s⁻²|(m2*g - f)/(m1 + m2)|m2*g - f = (m1 + m2)*a|Fnet = ma"
                    "|(m2*g - f)/m2 ~ every|both|all|m;m2*g/(m1 + m2) ~ friction"
                )
            },
        ),
        (
            {"find": "T"},
            {
                "find": (
                    "f|N|mu*m1*g||fk = µkN|\na|m·s⁻²|(m2*g - f)/(m1 + m2)|m2*g - f = (m1 + m2)*a|Fnet = ma|m2*g/(m1 +"
                    " m2) ~ friction\nT|N|m2*(g - a)|m2*g - T = m2*a|Fnet = ma|m2*g ~ accelerat|could not;m2*(g + a) ~"
                    " fall|weight|minus|sign|subtract;m2*a ~ net|weight"
                )
            },
        ),
    ],
    "newton.pulley": [
        (
            {"find": "a"},
            {
                "find": (
                    "a|m·s⁻²|(m2*g - m1*g)/(m1 + m2)|m2*g - m1*g = (m1 + m2)*a|Fnet = ma"
                    "|(m2*g - m1*g)/m2 ~ every|both|all|m;g*(m1 + m2)/(m2 - m1) ~ upside|divid|turn"
                )
            },
        ),
        (
            {"find": "T"},
            {
                "find": (
                    "a|m·s⁻²|(m2*g - m1*g)/(m1 + m2)|m2*g - m1*g = (m1 + m2)*a|Fnet = ma|(m2*g - m1*g)/m2 ~"
                    " every|both|all\nT|N|m2*(g - a)|m2*g - T = m2*a;T - m1*g = m1*a|Fnet = ma|m2*g ~ accelerat|could"
                    " not;m2*(g + a) ~ fall|weight|minus|sign|subtract;m2*a ~ net|weight"
                )
            },
        ),
    ],
    "newton.lift": [
        (
            {"on": "floor", "find": "N"},
            {
                "find": (
                    "N|N|m*(g + a)|N - m*g = m*a|Fnet = ma|m*g ~ accelerat;m*(g - a) ~ up|add|sign|plus"
                    ";m*a ~ weight|net"
                )
            },
        ),
        (
            {"on": "rope", "find": "T"},
            {
                "find": (
                    "T|N|m*(g + a)|T - m*g = m*a|Fnet = ma|m*g ~ accelerat;m*(g - a) ~ up|add|sign|plus;m*a ~"
                    " weight|net"
                )
            },
        ),
    ],
    "newton.bench": [
        (
            {},
            {
                "friction": "f|N|mu*m1*g||fk = µkN|mu*m2*g ~ toolbox|own|m;mu*m1 ~ g",
                "motion": (
                    "a|m·s⁻²|(m2*g - f)/(m1 + m2)|m2*g - f = (m1 + m2)*a|Fnet = ma|m2*g/(m1 + m2) ~ friction\n"
                    "T|N|m2*(g - a)|m2*g - T = m2*a;T - f = m1*a|Fnet = ma|m2*g ~ accelerat|could not"
                    ";m2*(g + a) ~ fall|weight|minus|sign|subtract;m2*a ~ net|weight"
                ),
                "slows": f"a_1|m·s⁻² {RL}|-f/m1|-f = m1*a_1|Fnet = ma|-f/(m1 + m2) ~ m|only|alone",
            },
        )
    ],
    "newton.quarry": [
        (
            {},
            {
                "normal": f"N|N|m1*g*cos(theta)|N - m1*g*cos(theta) = 0||m1*g ~ {ACROSS}|cos;m1*g*sin(theta) ~ cos|sin",
                "along": (
                    f"D|N {SLOPE}|m2*g - m1*g*sin(theta)|||m2*g - m1*g*cos(theta) ~ sin|cos;m2*g - m1*g ~ sin|part"
                ),
                "limit": "f_smax|N|mu_s*N|||mu_k*N ~ static|rest|µ|μ",
            },
        )
    ],
    "gravitation.force": [
        (
            {"find": "F"},
            {
                "find": (
                    "F|N|G*m1*m2/r**2|||G*m1*m2/r ~ square;G*(m1 + m2)/r**2 ~ product|multipl"
                    ";G*m1*m2/(2*r)**2 ~ radius|diameter|distance|doubl|twice|half;g*m1*m2/r**2 ~ G|constant"
                )
            },
        ),
        (
            {"find": "r"},
            {
                "find": (
                    "r|m|sqrt(G*m1*m2/F)|F = G*m1*m2/r**2;r**2 = G*m1*m2/F||G*m1*m2/F ~ root;sqrt(F/(G*m1*m2)) ~ upside"
                    "|divid|turn;sqrt(G*m1*m2*F) ~ divid"
                )
            },
        ),
        (
            {"find": "m1"},
            {"find": "m1|kg|F*r**2/(G*m2)|F = G*m1*m2/r**2||F*r/(G*m2) ~ square;F*r**2/G ~ m"},
        ),
    ],
    "gravitation.field": [
        (
            {"find": "g"},
            {"find": "g|m·s⁻²|G*M/R**2|||G*M/R ~ square;G*M/(2*R)**2 ~ radius|diameter|distance|doubl|twice|half"},
        ),
        (
            {"find": "g_h"},
            {
                "find": (
                    "g_h|m·s⁻²|G*M/(R + h)**2|||G*M/h**2 ~ centre|radius|add;G*M/R**2 ~ height|add;G*M/(R + h) ~ square"
                )
            },
        ),
        ({"find": "M"}, {"find": "M|kg|g*R**2/G|g = G*M/R**2||g*R/G ~ square;G*R**2/g ~ upside|divid|turn|G"}),
    ],
    "gravitation.balance": [
        (
            {"find": "r_1"},
            {
                "find": (
                    "r_1|m|d/(1 + sqrt(m2/m1))|G*m1/r_1**2 = G*m2/(d - r_1)**2||d/(1 + m2/m1) ~ root|square;d/2 ~"
                    " m|equal|half"
                )
            },
        )
    ],
    "gravitation.lander": [
        (
            {},
            {
                "field": "g|m·s⁻²|G*M/R**2|||G*M/R ~ square",
                "weight": "w|N|m*g||Fg = mg|m*9.8 ~ g|there|world",
                "height": "h|m|R*sqrt(n) - R|||R*sqrt(n) ~ centre|surface|subtract|radius;R*n - R ~ root",
                "other": "f||a/b**2|||a/b ~ square;a*b**2 ~ divid",
            },
        )
    ],
    "gravitation.probe": [
        (
            {},
            {
                "moon-mass": "M|kg|g*R**2/G|g = G*M/R**2||g*R/G ~ square",
                "force": (
                    "F|N|G*M*m/(R + h)**2|||G*M*m/h**2 ~ centre|radius|add;G*M*m/R**2 ~ height|add;G*M*m/(R + h) ~"
                    " square"
                ),
                "field": "g_h|m·s⁻²|F/m|F = m*g_h||G*M/R**2 ~ height|up there",
                "height": "h_2|m|R*sqrt(g/g_2) - R|||R*sqrt(g/g_2) ~ centre|surface|subtract|radius;R*g/g_2 - R ~ root",
            },
        )
    ],
    "gravitation.rocks": [
        (
            {},
            {
                "force": "F|N|G*m1*m2/d**2|||G*m1*m2/d ~ square;G*(m1 + m2)/d**2 ~ product|multipl",
                "acceleration": "a_B|m·s⁻²|F/m2|F = m2*a_B|Fnet = ma|F/m1 ~ B|own|mass",
                "balance": "r_1|m|d/(1 + sqrt(m2/m1))|G*m1/r_1**2 = G*m2/(d - r_1)**2||d/(1 + m2/m1) ~ root|square",
                "others": "f||a*b/c**2|||a*b/c ~ square;(a + b)/c**2 ~ multipl|product",
            },
        )
    ],
    "gravitation.factors": [
        ({"find": "f"}, {"find": "f||a*b/d**2|||a*b/d ~ square;a*b*d**2 ~ divid;(a + b)/d**2 ~ multipl|product"})
    ],
    "projectile.from-height": [
        (
            {"start": "thrown", "positive": "up", "find": "t"},
            {
                "find": (
                    "t|s|(u + sqrt(u**2 + 2*9.8*H))/9.8|-H = u*t + 1/2*(-9.8)*t**2;-H = u*t - 4.9*t**2|Δy = viΔt +"
                    " ½aΔt²|(-u + sqrt(u**2 + 2*9.8*H))/9.8 ~ sign|opposite|direction|root|size;sqrt(2*H/9.8) ~"
                    " u|start|velocity;u/9.8 ~ top|zero"
                )
            },
        ),
        (
            {"start": "thrown", "positive": "up", "find": "v"},
            {
                "find": (
                    f"v|m·s⁻¹ {UD}|-sqrt(u**2 + 2*9.8*H)|v**2 = u**2 + 2*(-9.8)*(-H)|vf² = vi² + 2aΔy"
                    "|-(u**2 + 2*9.8*H) ~ root;-sqrt(2*9.8*H) ~ u|start;-sqrt(u**2 + 9.8*H) ~ 2|half|twice"
                )
            },
        ),
    ],
    "projectile.bounce": [
        (
            {"find": "Deltav"},
            {
                "find": (
                    "v_1|m·s⁻¹|sqrt(2*g*h_1)|v_1**2 = 2*g*h_1||2*g*h_1 ~ root\nv_2|m·s⁻¹|sqrt(2*g*h_2)|v_2**2 ="
                    " 2*g*h_2||2*g*h_2 ~ root\nDeltav|m·s⁻¹ R upwards/downwards|v_2 + v_1|Deltav = v_2 - (-v_1)|Δv = vf"
                    " − vi|v_1 - v_2 ~ add|direction|revers|turn"
                )
            },
        )
    ],
    "projectile.court": [
        (
            {},
            {
                "before": (
                    f"v_1|m·s⁻¹ {UD}|-sqrt(2*g*h_1)|v_1**2 = 2*g*h_1|vf² = vi² + 2aΔy|-2*g*h_1 ~ root;-sqrt(g*h_1) ~"
                    " 2|half"
                ),
                "after": (
                    f"v_2|m·s⁻¹ {UD}|sqrt(2*g*h_2)|v_2**2 = 2*g*h_2|vf² = vi² + 2aΔy|2*g*h_2 ~ root;sqrt(g*h_2) ~"
                    " 2|half"
                ),
                "net-force": (
                    f"F_net|N {UD}|m*(v_2 - v_1)/Deltat|F_net*Deltat = m*(v_2 - v_1)|FnetΔt = Δp"
                    "|m*(v_2 + v_1)/Deltat ~ add|direction|revers|turn;(v_2 - v_1)/Deltat ~ mass|m"
                ),
                "floor-force": (
                    "N|N|F_net + m*g|N - m*g = F_net|Fnet = N − mg|F_net - m*g ~ add|carr|weight;F_net ~ weight|mg"
                ),
            },
        )
    ],
    "projectile.lamp": [
        (
            {},
            {
                "top-time": (
                    "t_top|s|u/9.8|0 = u + (-9.8)*t_top;0 = u - 9.8*t_top|vf = vi + aΔt|u*9.8 ~ divid;2*u/9.8 ~"
                    " half|top|twice"
                ),
                "height": "h|m|H + u**2/(2*9.8)|||u**2/(2*9.8) ~ ground|H|add;H + u**2/9.8 ~ 2|half",
                "ground": (
                    "t|s|(u + sqrt(u**2 + 2*9.8*H))/9.8|-H = u*t + 1/2*(-9.8)*t**2;-H = u*t - 4.9*t**2|Δy = viΔt +"
                    " ½aΔt²|sqrt(2*H/9.8) ~ balloon|u|start;(-u + sqrt(u**2 + 2*9.8*H))/9.8 ~"
                    " sign|opposite|direction|root|size"
                ),
                "velocity": (
                    f"v|m·s⁻¹ {UD}|-sqrt(u**2 + 2*9.8*H)|v**2 = u**2 + 2*(-9.8)*(-H)|vf² = vi² + 2aΔy"
                    "|-(u**2 + 2*9.8*H) ~ root;-sqrt(2*9.8*H) ~ balloon|u|start"
                ),
                "balloon": "y_B|m|H + u*t|||u*t ~ H|ground|add;H - u*t ~ add|rises|up",
            },
        )
    ],
    "projectile.lift": [
        (
            {"find": "t"},
            {
                "find": (
                    "t|s|sqrt(2*h/(9.8 + a))|h = 1/2*(9.8 + a)*t**2||sqrt(2*h/9.8) ~ lift|a;sqrt(h/(9.8 + a)) ~ 2|half"
                )
            },
        )
    ],
    "momentum.join": [
        (
            {"find": "v"},
            {
                "find": (
                    f"v|m·s⁻¹ {RL}|(m1*u1 + m2*u2)/(m1 + m2)|m1*u1 + m2*u2 = (m1 + m2)*v|Σp before = Σp"
                    " after|(m1*abs(u1) + m2*abs(u2))/(m1 + m2) ~ direction|negative|opposite|sign;(m1*u1 + m2*u2)/m1"
                    " ~ one|both|divid|masses"
                )
            },
        )
    ],
    "momentum.part": [
        (
            {"find": "v2"},
            {
                "find": (
                    f"v2|m·s⁻¹ {RL}|(m1*u1 + m2*u2 - m1*v1)/m2|m1*u1 + m2*u2 = m1*v1 + m2*v2|Σp before = Σp"
                    " after|(m1*abs(u1) + m2*abs(u2) - m1*abs(v1))/m2 ~ direction|negative|opposite|sign;(m1*u1 +"
                    " m2*u2)/m2 ~ first|m|left"
                )
            },
        )
    ],
    "momentum.spring": [
        (
            {"find": "v2"},
            {
                "find": (
                    f"v2|m·s⁻¹ {RL}|((m1 + m2)*u - m1*v1)/m2|(m1 + m2)*u = m1*v1 + m2*v2|pi = pf"
                    "|((m1 + m2)*u - m1*abs(v1))/m2 ~ direction|negative|opposite|sign"
                )
            },
        )
    ],
    "momentum.impulse": [
        (
            {"find": "F_net"},
            {
                "find": (
                    f"F_net|N {RL}|m*(v - u)/Deltat|F_net*Deltat = m*(v - u);F_net*Deltat = m*v - m*u|FnetΔt = Δp"
                    "|m*(u - v)/Deltat ~ final|initial;m*(v - u) ~ Δt|time|divid"
                )
            },
        )
    ],
    "momentum.pulse": [
        (
            {"find": "v"},
            {
                "find": (
                    f"v|m·s⁻¹ {RL}|u + F_max*Deltat/(2*m)|1/2*F_max*Deltat = m*(v - u)|Impulse = area"
                    "|u + F_max*Deltat/m ~ half|triangle|area;F_max*Deltat/(2*m) ~ u|first|before"
                )
            },
        )
    ],
    "momentum.floor": [
        (
            {"find": "N"},
            {
                "find": (
                    "F_net|N|m*(v - u)/Deltat|F_net*Deltat = m*(v - u)|FnetΔt = Δp|m*(v + u)/Deltat ~"
                    " add|turn|direction|sign\nN|N|F_net + m*g|N - m*g = F_net|Fnet = N − w|F_net - m*g ~"
                    " add|carr|weight;F_net ~ weight|mg"
                )
            },
        )
    ],
    "momentum.market": [
        (
            {},
            {
                "velocity": (
                    f"v|m·s⁻¹ {RL}|(m1*u1 + m2*u2)/(m1 + m2)|m1*u1 + m2*u2 = (m1 + m2)*v|Σpi = Σpf|(m1*abs(u1) +"
                    " m2*abs(u2))/(m1 + m2) ~ direction|negative|opposite|sign;(m1*u1 + m2*u2)/m1 ~"
                    " one|both|divid|masses"
                ),
                "force": (
                    f"F_net|N {RL}|m2*(v - u2)/Deltat|F_net*Deltat = m2*(v - u2)|FnetΔt = Δp"
                    "|m2*(u2 - v)/Deltat ~ final|initial;m2*(v + u2)/Deltat ~ add|turn|direction|sign"
                ),
            },
        )
    ],
    "momentum.canister": [
        (
            {},
            {
                "velocity": (
                    f"v2|m·s⁻¹ {RL}|((m1 + m2)*u - m1*v1)/m2|(m1 + m2)*u = m1*v1 + m2*v2|Σpi = Σpf"
                    "|((m1 + m2)*u - m1*abs(v1))/m2 ~ direction|negative|opposite|sign"
                ),
                "force": (
                    f"F_net|N {RL}|m1*(v1 - u)/Deltat|F_net*Deltat = m1*(v1 - u)|FnetΔt = Δp"
                    "|m1*(u - v1)/Deltat ~ final|initial"
                ),
            },
        )
    ],
    "momentum.bat": [
        (
            {},
            {
                "impulse": (
                    f"Deltap|N·s {RL}|m*(v - u)|Deltap = m*v - m*u|Δp = pf − pi|m*(v + u) ~"
                    " add|turn|direction|sign;m*(u - v) ~ final|initial"
                ),
                "force": f"F_net|N {RL}|Deltap/Deltat|F_net*Deltat = Deltap|FnetΔt = Δp|Deltap*Deltat ~ divid",
                "peak": f"F_max|N {RL}|2*F_net|1/2*F_max*Deltat = F_net*Deltat||F_net ~ half|triangle|area|twice",
                "softer-force": f"F_2|N {RL}|Deltap/Deltat_2|F_2*Deltat_2 = Deltap|FnetΔt = Δp|Deltap*Deltat_2 ~ divid",
            },
        )
    ],
    "energy.spring-launch": [
        (
            {"find": "v"},
            {
                "find": (
                    "v|m·s⁻¹|sqrt(k*x**2/m - 2*g*h)|1/2*k*x**2 = 1/2*m*v**2 + m*g*h|Ei = Ef|k*x**2/m - 2*g*h ~ root"
                    ";sqrt(k*x**2/m) ~ height|h|lift"
                )
            },
        )
    ],
    "energy.one-force": [
        (
            {"find": "W"},
            {
                "find": (
                    f"W|J {SIGN}|F*Deltax*cos(theta)||W = FΔxcosθ|F*Deltax*sin(theta) ~ cos|between;F*Deltax ~"
                    " cos|between"
                )
            },
        )
    ],
    "energy.two-places": [
        (
            {"find": "v"},
            {
                "find": (
                    "v|m·s⁻¹|sqrt(u**2 + 2*g*(h_A - h_B))|m*g*h_A + 1/2*m*u**2 = m*g*h_B + 1/2*m*v**2|Emech A = Emech B"
                    "|sqrt(2*g*(h_A - h_B)) ~ u|A|already;u**2 + 2*g*(h_A - h_B) ~ root;sqrt(u**2 + 2*g*h_A) ~ h|B"
                )
            },
        )
    ],
    "energy.pendulum": [
        (
            {"find": "v"},
            {
                "find": (
                    "h|m|L - L*cos(alpha)|h = L*(1 - cos(alpha))||L*cos(alpha) ~ below|above|L|height|1;L*(1 -"
                    " sin(alpha)) ~ cos|sin\nv|m·s⁻¹|sqrt(2*g*h)|1/2*m*v**2 = m*g*h;v**2 = 2*g*h|Ep = Ek|2*g*h ~"
                    " root;sqrt(g*h) ~ 2|half"
                )
            },
        )
    ],
    "energy.average-power": [
        (
            {"find": "P"},
            {
                "find": (
                    "W|J|m*g*h + 1/2*m*v**2 - 1/2*m*u**2|W = m*g*h + 1/2*m*(v**2 - u**2)|Wnc = ΔEp + ΔEk|m*g*h ~"
                    " speed|kinetic\nP|W|W/Deltat|||W*Deltat ~ divid"
                )
            },
        )
    ],
    "energy.average-speed": [
        (
            {"find": "P"},
            {"find": "v_av|m·s⁻¹|(u + v)/2|||\nP|W|F*v_av||Pave = Fvave|F*v ~ average"},
        )
    ],
    "energy.constant-speed": [
        (
            {"find": "P", "way": "up"},
            {
                "find": (
                    "F|N|m*g*sin(theta) + f|F - m*g*sin(theta) - f = 0|Fnet = 0|f ~ slope|weight|along;m*g*cos(theta) +"
                    " f ~ sin|cos;m*g*sin(theta) - f ~ both|add|against|friction\nP|W|F*v|||"
                )
            },
        )
    ],
    "energy.ramp": [
        (
            {},
            {
                "pull": f"W_F|J {SIGN}|F*L||W = FΔxcosθ|F*L*cos(theta) ~ along|between|angle",
                "weight": (
                    f"W_w|J {SIGN}|-m*g*L*sin(theta)|W_w = -m*g*sin(theta)*L|W = FΔxcosθ|-m*g*L ~ height|vertical|sin"
                    ";-m*g*L*cos(theta) ~ sin|cos|height"
                ),
                "friction": f"N|N|m*g*cos(theta)|||m*g ~ {ACROSS}|cos\nf|N|mu_k*N|||\nW_f|J {SIGN}|-f*L||W = FΔxcosθ|",
                "speed": (
                    "W_net|J|W_F + W_w + W_f|||W_F + W_w - W_f ~ against|friction|negative|add\n"
                    "v|m·s⁻¹|sqrt(2*W_net/m)|W_net = 1/2*m*v**2|Wnet = ΔEk|sqrt(W_net/m) ~ 2|half;2*W_net/m ~ root"
                ),
            },
        )
    ],
    "energy.slide": [
        (
            {},
            {
                "speed": (
                    "v|m·s⁻¹|sqrt(u**2 + 2*g*h)|m*g*h + 1/2*m*u**2 = 1/2*m*v**2|(Ep + Ek)A = (Ep + Ek)B|sqrt(2*g*h) ~"
                    " u|A|already;u**2 + 2*g*h ~ root;sqrt(u**2 + g*h) ~ 2|half"
                ),
                "friction": "f|N|m*v**2/(2*d)|-f*d = 0 - 1/2*m*v**2|Wnet = ΔEk|m*v**2/d ~ 2|half;m*v/(2*d) ~ square",
                "coefficient": "mu_k||f/(m*g)|f = mu_k*m*g|fk = µkN|f/m ~ g;m*g/f ~ upside|divid|turn",
            },
        )
    ],
    "energy.caught": [
        (
            {},
            {
                "velocity": (
                    f"v|m·s⁻¹ {RL}|m1*u/(m1 + m2)|m1*u = (m1 + m2)*v|Σpi = Σpf|u ~ momentum|mass;m1*u/m2 ~"
                    " both|one|add|masses"
                ),
            },
        )
    ],
    "energy.rebound": [
        (
            {},
            {
                "before": "v1|m·s⁻¹|sqrt(2*g*h1)|m*g*h1 = 1/2*m*v1**2|Ep = Ek|2*g*h1 ~ root;sqrt(g*h1) ~ 2|half",
                "after": "v2|m·s⁻¹|sqrt(2*g*h2)|1/2*m*v2**2 = m*g*h2|Ek = Ep|2*g*h2 ~ root;sqrt(g*h2) ~ 2|half",
                "lost": (
                    "E_lost|J|1/2*m*v1**2 - 1/2*m*v2**2|E_lost = 1/2*m*(v1**2 - v2**2)|ΔEk|1/2*m*(v1 - v2)**2 ~"
                    " square|each"
                ),
                "force": (
                    "F_net|N|m*(v2 + v1)/Deltat|F_net*Deltat = m*(v2 + v1)|FnetΔt = Δp|m*(v1 - v2)/Deltat ~"
                    f" add|turn|direction|revers\nN|N {UD}|F_net + m*g|N - m*g = F_net|Fnet = N − w|F_net ~"
                    " weight|mg;F_net - m*g ~ add|carr|weight"
                ),
            },
        )
    ],
    "energy.turning": [
        (
            {},
            {
                "distance": (
                    f"N|N|m*g*cos(theta)|||m*g ~ {ACROSS}|cos\nf|N|mu_k*N|||mu_s*N ~ kinetic|slid|µ|μ\n"
                    "d|m|m*u**2/(2*(m*g*sin(theta) + f))|-m*g*sin(theta)*d - f*d = 0 - 1/2*m*u**2|Wnet = ΔEk"
                    "|m*u**2/(2*m*g*sin(theta)) ~ friction|f;m*u**2/(m*g*sin(theta) + f) ~ 2|half"
                )
            },
        )
    ],
    "energy.two-ways": [
        (
            {},
            {
                "weight": f"W_w|J {SIGN}|-m*g*h||W = FΔxcosθ|-m*g*L_1 ~ height|vertical",
                "way-1": f"W_1|J {SIGN}|-f*L_1||W = FΔxcosθ|-f*h ~ length|L|way|path",
                "way-2": f"W_2|J {SIGN}|-f*L_2||W = FΔxcosθ|-f*h ~ length|L|way|path",
            },
        )
    ],
    "doppler.one-moves": [
        (
            {"moving": "source", "way": "towards", "find": "f_L"},
            {
                "find": (
                    "f_L|Hz|v/(v - v_S)*f_S|f_L = f_S*v/(v - v_S);f_L = (v + 0)/(v - v_S)*f_S|fL = (v ± vL)/(v ± vS)"
                    " fS|v/(v + v_S)*f_S ~ towards|raise|sign;(v + v_S)/v*f_S ~ below|side|place;(v - v_S)/v*f_S ~"
                    " upside|top"
                )
            },
        ),
        (
            {"moving": "source", "way": "away", "find": "f_L"},
            {
                "find": (
                    "f_L|Hz|v/(v + v_S)*f_S|f_L = f_S*v/(v + v_S)|fL = (v ± vL)/(v ± vS) fS"
                    "|v/(v - v_S)*f_S ~ away|lower|sign;(v - v_S)/v*f_S ~ below|side|place;(v + v_S)/v*f_S ~ upside|top"
                )
            },
        ),
        (
            {"moving": "listener", "way": "towards", "find": "f_L"},
            {
                "find": (
                    "f_L|Hz|(v + v_L)/v*f_S|f_L = f_S*(v + v_L)/v|fL = (v ± vL)/(v ± vS) fS|(v - v_L)/v*f_S ~"
                    " towards|raise|sign;v/(v - v_L)*f_S ~ above|side|place;v/(v + v_L)*f_S ~ upside|top"
                )
            },
        ),
    ],
    "doppler.both-move": [
        (
            {"source_way": "towards", "listener_way": "towards", "find": "f_L"},
            {
                "find": (
                    "f_L|Hz|(v + v_L)/(v - v_S)*f_S||fL = (v ± vL)/(v ± vS) fS|(v - v_L)/(v + v_S)*f_S ~"
                    " sign|raise|towards|lower"
                )
            },
        ),
        (
            {"source_way": "away", "listener_way": "towards", "find": "f_L"},
            {
                "find": (
                    "f_L|Hz|(v + v_L)/(v + v_S)*f_S||fL = (v ± vL)/(v ± vS) fS|(v - v_L)/(v - v_S)*f_S ~"
                    " sign|raise|towards|lower"
                )
            },
        ),
    ],
    "doppler.passing": [
        (
            {"passing": "source", "find": "v_S"},
            {
                "find": (
                    "v_S|m·s⁻¹|v*(f_1 - f_2)/(f_1 + f_2)|f_1/f_2 = (v + v_S)/(v - v_S);f_1*(v - v_S) = f_2*(v + v_S)|"
                    "|v*(f_1 - f_2)/f_1 ~ both|one|rest|f;v*(f_1 - f_2)/f_2 ~ both|one|rest|f"
                )
            },
        )
    ],
    "doppler.crossing": [
        (
            {},
            {
                "other-note": (
                    "f_2|Hz|v/(v + v_S)*f_S||fL = (v ± vL)/(v ± vS) fS|v/(v - v_S)*f_S ~ away|lower|sign;(v -"
                    " v_S)/v*f_S ~ below|side|place"
                ),
            },
        )
    ],
    "doppler.shaft": [
        (
            {},
            {
                "speed": "v_S|m·s⁻¹|sqrt(2*g*h)|v_S**2 = 2*g*h|vf² = vi² + 2aΔy|2*g*h ~ root;sqrt(g*h) ~ 2|half",
                "below": (
                    "f_L|Hz|v/(v - v_S)*f_S||fL = (v ± vL)/(v ± vS) fS|v/(v + v_S)*f_S ~ towards|raise|sign;(v +"
                    " v_S)/v*f_S ~ below|side|place"
                ),
                "above": (
                    "f_2|Hz|v/(v + v_S)*f_S||fL = (v ± vL)/(v ± vS) fS|v/(v - v_S)*f_S ~ away|lower|sign;(v -"
                    " v_S)/v*f_S ~ below|side|place"
                ),
            },
        )
    ],
    "doppler.bell": [
        (
            {},
            {
                "before": (
                    "f_1|Hz|(v + v_L)/v*f_S||fL = (v ± vL)/(v ± vS) fS|(v - v_L)/v*f_S ~ towards|raise|sign;v/(v -"
                    " v_L)*f_S ~ above|side|place"
                ),
                "after": (
                    "f_2|Hz|(v - v_L)/v*f_S||fL = (v ± vL)/(v ± vS) fS|(v + v_L)/v*f_S ~ away|lower|sign;v/(v +"
                    " v_L)*f_S ~ above|side|place"
                ),
            },
        )
    ],
    "circuits.cell": [
        (
            {"state": "supplies", "find": "I"},
            {"find": "I|A|epsilon/(R + r)|epsilon = I*(R + r);epsilon = I*R + I*r|ε = I(R + r)|epsilon/R ~ internal|r"},
        ),
        (
            {"state": "supplies", "find": "epsilon"},
            {"find": "epsilon|V|I*(R + r)|epsilon = I*R + I*r|ε = I(R + r)|I*R ~ internal|r"},
        ),
        (
            {"state": "supplies", "find": "r"},
            {"find": "r|Ω|epsilon/I - R|epsilon = I*(R + r)|ε = I(R + r)|epsilon/I ~ total|subtract|external"},
        ),
    ],
    "circuits.two-loads": [
        (
            {"find": "r"},
            {
                "find": (
                    "r|Ω|(V1 - V2)/(I2 - I1)|||V1/I1 ~ load|change;V2/I2 ~ load|change;(V1 - V2)/(I2 + I1) ~ add"
                    "|sign|subtract"
                )
            },
        ),
    ],
    "circuits.resistors": [
        (
            {"count": "2", "how": "parallel", "find": "R"},
            {
                "find": (
                    "R|Ω|1/(1/R1 + 1/R2)|1/R = 1/R1 + 1/R2;R = R1*R2/(R1 + R2)||1/R1 + 1/R2 ~ invert|upside"
                    ";R1 + R2 ~ add|recip"
                )
            },
        ),
        (
            {"count": "3", "how": "series", "find": "R"},
            {"find": "R|Ω|R1 + R2 + R3|||1/(1/R1 + 1/R2 + 1/R3) ~ series|recip"},
        ),
        (
            {"count": "2", "how": "series", "find": "R"},
            {"find": "R|Ω|R1 + R2|||1/(1/R1 + 1/R2) ~ series|recip"},
        ),
    ],
    "circuits.lanterns": [
        (
            {},
            {
                "pair": (
                    "R_p|Ω|1/(1/R1 + 1/R2)|1/R_p = 1/R1 + 1/R2;R_p = R1*R2/(R1 + R2)||1/R1 + 1/R2 ~ invert|upside"
                    "|turn;R1 + R2 ~ add|recip|lower"
                ),
                "current": (
                    "R_T|Ω|R_s + R_p|||\nI|A|epsilon/(R_T + r)|epsilon = I*(R_T + r)|ε = I(R + r)"
                    "|epsilon/R_T ~ internal|r|cell"
                ),
                "terminal": (
                    "V_ext|V|epsilon - I*r|epsilon = V_ext + I*r||I*r ~ lost|subtract;epsilon + I*r ~ add|less|subtract"
                ),
                "power": "V_p|V|I*R_p|||\nP_1|W|V_p**2/R1|||V_p/R1 ~ square;epsilon**2/R1 ~ emf|own",
                "alone": (
                    "I_2|A|epsilon/(R_s + R1 + r)|epsilon = I_2*(R_s + R1 + r)|ε = I(R + r)"
                    "|epsilon/(R_s + R1) ~ internal|r|left"
                ),
                "after": "P_2|W|I_2**2*R1|||I_2*R1 ~ square",
            },
        )
    ],
    "circuits.boat": [
        (
            {},
            {
                "lost": "V_r|V|epsilon - V_ext|epsilon = V_ext + V_r||epsilon + V_ext ~ add|subtract|differ",
                "internal": "r|Ω|V_r/I|V_r = I*r||I/V_r ~ round|upside;V_ext/I ~ load|lost",
                "load": "R|Ω|V_ext/I|V_ext = I*R||I/V_ext ~ round|upside",
                "energy": "P|W|V_ext*I|||\nW|J|P*Deltat|W = V_ext*I*Deltat||P/Deltat ~ divid",
                "both": (
                    "R_p|Ω|R/2|1/R_p = 1/R + 1/R||\nI_2|A|epsilon/(R_p + r)|epsilon = I_2*(R_p + r)|"
                    "|epsilon/R_p ~ internal|r"
                ),
                "reading": "V_2|V|epsilon - I_2*r|epsilon = V_2 + I_2*r||I_2*r ~ lost|subtract",
            },
        )
    ],
    "circuits.urn": [
        (
            {},
            {
                "current": "I|A|P/V|P = V*I||V/P ~ round|upside;P*V ~ multipl|divide",
                "resistance": "R|Ω|V/I|V = I*R||I/V ~ round|upside",
                "energy": "W|J|P*Deltat|||P/Deltat ~ divid",
                "low": "P_2|W|V_2**2/R|||V_2/R ~ square",
                "longer": "t_2|s|W/P_2|W = P_2*t_2||P_2/W ~ round|upside|over",
            },
        )
    ],
}

# What the part asks: (sentences of full marks, sentences that lack or turn a point)
PHOTON = "E|J|h*c/lamda||E = hc/λ|h*lamda ~ wavelength|frequency|c/λ"
LEFT = (
    "E_k|J|E - W_0|E = W_0 + E_k;E_k + W_0 = E|E = W0 + Ek|E + W_0 ~ subtract|pays|added"
    ";E ~ left out|pays|work function"
)
SPEED = "v|m·s⁻¹|sqrt(2*E_k/m_e)|E_k = 1/2*m_e*v**2|Ek = ½mv²|sqrt(E_k/m_e) ~ ½|half|doubl;2*E_k/m_e ~ root"
QUESTIONS |= {
    "photoelectric.photon": [
        ({"find": "E"}, {"find": PHOTON}),
        ({"find": "f"}, {"find": "f|Hz|E/h|E = h*f|E = hf|E*h ~ divide|multipl"}),
        ({"find": "lamda"}, {"find": "lamda|m|c/f|c = f*lamda|c = fλ|f/c ~ divide|turned|upside;c*f ~ divide|multipl"}),
    ],
    "photoelectric.emission": [
        ({"find": "E_k"}, {"find": f"{PHOTON}\n{LEFT}"}),
        ({"find": "v"}, {"find": f"E|J|h*f||E = hf|f/h ~ multipl|divid\n{LEFT}\n{SPEED}"}),
    ],
    "photoelectric.intensity": [
        (
            {"find": "I"},
            {
                "find": (
                    f"{PHOTON}\nN|s⁻¹|P/E|P = N*E||P*E ~ divide|multipl;E/P ~ turned|upside|divide\n"
                    "n|s⁻¹|N/k|N = n*k||N*k ~ divide|more electrons\nI|A|n*e||I = ne|n/e ~ multipl|divid"
                )
            },
        )
    ],
    "photoelectric.gate": [
        (
            {},
            {
                "work": "W_0|J|h*c/lamda_0||W0 = hc/λ0|h*lamda_0 ~ wavelength|frequency|c/λ",
                "energy": f"{PHOTON}\n{LEFT}",
                "speed": SPEED,
            },
        )
    ],
}


LAWS: dict[str, tuple[tuple[str, ...], tuple[str, ...]]] = {
    "Ohm's law": (
        (
            "The current is directly proportional to the potential difference across it, at constant temperature.",
            "At constant temperature the voltage across a conductor is directly proportional to the current in it.",
        ),
        ("The resistance is the voltage divided by the current.",),
    ),
    "definition of emf": (
        (
            "The maximum energy supplied by a cell per coulomb of charge that passes through it.",
            "Emf is the maximum work done by the battery per unit charge passing through it.",
        ),
        ("The potential difference across the terminals of the battery.", "The force that drives the charges."),
    ),
    "definition of electric power": (
        (
            "The rate at which electrical energy is transferred.",
            "The rate at which work is done.",
            "Electrical energy transferred per unit time.",
        ),
        ("The electrical energy that is transferred.",),
    ),
    "resistors in series": (
        (
            "The current is the same in all of them and the potential differences add up.",
            "Voltages add up to the total voltage and the current through each resistor is the same.",
        ),
        ("The potential difference is the same across each.",),
    ),
    "resistors in parallel": (
        (
            "The potential difference across each branch is the same, the currents add up to the total.",
            "The voltage is the same over all of them; the currents add.",
        ),
        ("The current is the same in every branch.",),
    ),
    "Newton's first law": (
        (
            "A body continues in its state of rest or of uniform velocity unless a net force acts on it.",
            (
                "An object will remain at rest or keep moving at a constant velocity unless acted on by a non-zero"
                " resultant force."
            ),
            "A body stays at rest or moves with constant velocity unless an unbalanced force acts on it.",
        ),
        ("A body remains at rest unless a force acts on it.", "Every action has an equal and opposite reaction."),
    ),
    "Newton's second law": (
        (
            (
                "When a resultant force acts on an object, it accelerates in the direction of the force. The"
                " acceleration is directly proportional to the resultant force and inversely proportional to the mass"
                " of the object."
            ),
            (
                "If a net force acts on a body the body accelerates in the direction of the net force, and this"
                " acceleration is directly proportional to the net force and inversely proportional to its mass."
            ),
            (
                "The acceleration of an object is inversely proportional to its mass and directly proportional to the"
                " net force acting on it, in the direction of that force."
            ),
        ),
        (
            "The acceleration is directly proportional to the mass and inversely proportional to the net force.",
            "Force equals mass times acceleration.",
        ),
    ),
    "Newton's third law": (
        (
            (
                "When body A exerts a force on body B, body B exerts a force of equal magnitude in the opposite"
                " direction on body A at the same time."
            ),
            (
                "If object A exerts a force on object B, object B will simultaneously exert an equal but opposite force"
                " on object A."
            ),
        ),
        ("For every action there is a reaction.", "When A exerts a force on B, B exerts a smaller force on A."),
    ),
    "maximum static friction": (
        (
            (
                "Static friction acts on a body at rest relative to the surface. It can have any size up to a maximum,"
                " which is the coefficient of static friction multiplied by the normal force."
            ),
        ),
        ("Friction is µN.",),
    ),
    "kinetic friction": (
        (
            (
                "It is the friction on a body that slides over a surface: the coefficient of kinetic friction times the"
                " normal force."
            ),
            (
                "The force that opposes an object which slides; it equals the normal force multiplied by the"
                " coefficient of kinetic friction."
            ),
        ),
        ("Friction on a body at rest.",),
    ),
    "definition of friction": (
        (
            (
                "Friction is the force parallel to the surface that opposes the motion of an object, or its tendency to"
                " move, relative to the surface."
            ),
            (
                "The force that opposes the motion of an object, or its tendency to move, relative to the surface, and"
                " which acts parallel to the surface."
            ),
        ),
        ("Friction is a force that makes things hot.",),
    ),
    "equilibrium": (
        ("A body is in equilibrium when the net force on it is zero.", "The resultant force on the object is zero."),
        ("The forces are large.", "The net force is constant."),
    ),
    "universal gravitation": (
        (
            (
                "Every particle in the universe attracts every other particle with a force which is directly"
                " proportional to the product of their masses and inversely proportional to the square of the distance"
                " between their centres."
            ),
            (
                "Each body in the universe attracts every other body with a gravitational force that is directly"
                " proportional to the product of the masses of the bodies and inversely proportional to the square of"
                " the distance between their centers."
            ),
            (
                "Two bodies attract each other with a force inversely proportional to the distance between their"
                " centres squared and directly proportional to their masses multiplied."
            ),
        ),
        (
            (
                "Every body attracts every other body with a force directly proportional to the sum of their masses and"
                " inversely proportional to the distance between their centres."
            ),
            "Bodies attract each other with a force proportional to the square of the distance between their centres.",
        ),
    ),
    "definition of weight": (
        (
            "Weight is the gravitational force the planet exerts on an object.",
            "The gravitational force that a planet exerts on any object on or near its surface.",
        ),
        ("Weight is the amount of matter in a body.",),
    ),
    "free fall": (
        (
            "Free fall is motion in which the only force on the body is the gravitational force.",
            "The motion of an object when gravitational force is the only force that acts on it.",
            "An object is in free fall if no other force than gravity acts on it.",
        ),
        ("The body falls down very fast.",),
    ),
    "acceleration in free fall": (
        (
            "The acceleration is downwards all the time, also at its highest point.",
            "It is 9,8 m·s⁻² downwards throughout, even at the highest point.",
            "Always downward, even when the ball is at its highest point.",
        ),
        ("It is zero at the top.", "Upwards while it rises."),
    ),
    "linear momentum": (
        (
            "The total linear momentum of an isolated system remains constant.",
            "In an isolated system the total linear momentum is conserved.",
            "The total linear momentum of an isolated system stays the same in magnitude and direction.",
            (
                "The total linear momentum before a collision equals the total linear momentum after it in an isolated"
                " system."
            ),
        ),
        ("Momentum is mass times velocity.", "The kinetic energy of an isolated system remains constant."),
    ),
    "in terms of momentum": (
        (
            (
                "The net force acting on an object is equal to the rate of change of momentum of the object in the"
                " direction of the net force."
            ),
            (
                "The resultant force equals the rate of change of its momentum and the change is in the direction of"
                " the resultant force."
            ),
        ),
        ("The net force is the change in momentum.",),
    ),
    "impulse": (
        (
            (
                "Impulse is the product of the net force acting on an object and the time the net force acts on the"
                " object."
            ),
            "The product of the resultant force and the contact time.",
            "The net force on a body multiplied by the time for which it acts.",
        ),
        ("Impulse is the product of mass and velocity.",),
    ),
    "elastic collision": (
        (
            "A collision in which the total kinetic energy is the same before and after.",
            "An elastic collision is one in which both total momentum and total kinetic energy are conserved.",
            "The total kinetic energy before the collision equals the total kinetic energy after it.",
        ),
        ("The bodies bounce off each other.",),
    ),
    "definition of work": (
        (
            (
                "The work done on an object by a constant force is the product of the force, the displacement and the"
                " cosine of the angle between them."
            ),
            (
                "Work is the force multiplied by the displacement and by the cosine of the angle between the force and"
                " the displacement."
            ),
        ),
        ("Work is force times mass.",),
    ),
    "work-energy theorem": (
        (
            "The net work done on an object is equal to the change in the object's kinetic energy.",
            "The work done by the net force equals the change in the kinetic energy of the body.",
            "Net work = change in kinetic energy",
        ),
        ("Work equals energy.", "The net work equals the change in potential energy."),
    ),
    "non-conservative force": (
        (
            "A force for which the work done in moving an object between two points depends on the path taken.",
            "The work it does between two points is dependent on the path.",
        ),
        ("A force that is not conserved.",),
    ),
    "of a conservative force": (
        (
            "A force for which the work done in moving an object between two points is independent of the path taken.",
            "The work it does does not depend on the path.",
        ),
        ("A force that stays the same.",),
    ),
    "mechanical energy": (
        (
            "The total mechanical energy of an isolated system remains constant.",
            "In an isolated system the total mechanical energy is conserved.",
            "The sum of the kinetic and the gravitational potential energy in an isolated system stays constant.",
        ),
        ("Energy cannot be created or destroyed.",),
    ),
    "power": (
        (
            "Power is the rate at which work is done or energy is expended.",
            "The rate at which work is done.",
            "The rate at which energy is transferred.",
        ),
        ("Power is force times distance.",),
    ),
    "Doppler effect": (
        (
            (
                "The change in the frequency (or pitch) of the sound detected by a listener because the sound source"
                " and the listener have different velocities relative to the medium of sound propagation."
            ),
            (
                "The change in observed frequency because the source and the listener have different velocities"
                " relative to the medium in which the sound travels."
            ),
            (
                "It is the change in pitch heard because the source and observer have different velocities relative to"
                " the medium."
            ),
        ),
        ("Sound gets louder when a car comes closer.", "The pitch rises steadily while the source approaches."),
    ),
}

# Written after the first run and not changed since.
LAWS |= {
    "photoelectric effect": (
        (
            (
                "The process whereby electrons are ejected from a metal surface when light of suitable frequency is"
                " incident on that surface."
            ),
            "The emission of electrons from a metal surface when light of high enough frequency falls on it.",
            "When light of a suitable frequency shines on a metal, electrons are emitted from its surface.",
        ),
        (
            "Electrons are ejected from a metal when it is heated.",
            "Light is emitted when electrons strike a metal.",
        ),
    ),
    "energy of a photon": (
        (
            "The energy of a photon is directly proportional to its frequency.",
            "Photon energy is proportional to the frequency.",
            "The energy of a photon equals Planck's constant times its frequency.",
        ),
        (
            "The energy of a photon is directly proportional to the wavelength.",
            "The energy of a photon is inversely proportional to the frequency.",
        ),
    ),
    "work function": (
        (
            "The minimum energy needed to eject an electron from a metal surface.",
            "The minimum energy required to remove an electron from the surface of the metal.",
            "The least energy an electron needs to leave the metal.",
        ),
        (
            "The minimum frequency needed to emit electrons.",
            "The maximum kinetic energy of the emitted electron.",
        ),
    ),
    "threshold frequency": (
        (
            "The minimum frequency of light needed to emit electrons from a certain metal surface.",
            "The lowest frequency of light at which electrons are emitted from the metal.",
            "The minimum frequency required to eject electrons.",
        ),
        (
            "The maximum frequency at which electrons are emitted.",
            "The minimum energy needed to emit electrons.",
        ),
    ),
}
MORE_LAWS: dict[str, tuple[tuple[str, ...], tuple[str, ...]]] = {
    "Newton's first law": (
        ("Every object keeps its state of rest or its constant velocity unless a resultant force acts on it.",),
        ("A moving body slows down unless a net force acts on it.",),
    ),
    "Newton's second law": (
        (
            (
                "The acceleration produced by a net force is in its direction, directly proportional to the net force"
                " and inversely proportional to the object's mass."
            ),
            "a is directly proportional to the resultant force and indirectly proportional to the mass of the object",
        ),
        ("The net force is inversely proportional to the acceleration.",),
    ),
    "Newton's third law": (
        ("Two bodies exert forces on each other simultaneously that are equal in size but opposite in direction.",),
        ("When A exerts a force on B, B exerts a force in the same direction on A.",),
    ),
    "kinetic friction": (
        (
            (
                "Friction on an object sliding over a surface, equal to the coefficient of kinetic friction times the"
                " normal force."
            ),
        ),
        ("Kinetic friction is the largest friction on a body at rest.",),
    ),
    "definition of friction": (
        ("A force parallel to the surface which opposes the motion or the tendency to move of a body.",),
        ("Friction acts perpendicular to the surface.",),
    ),
    "equilibrium": (
        ("When all the forces on it add up to a resultant force of zero.",),
        ("The body does not move.",),
    ),
    "universal gravitation": (
        (
            (
                "Any two particles attract each other with a force directly proportional to the product of their masses"
                " and inversely proportional to the squared distance between the centres."
            ),
        ),
        (
            (
                "Every object attracts every other object with a force inversely proportional to the product of their"
                " masses and directly proportional to the square of the distance between their centres."
            ),
        ),
    ),
    "definition of weight": (
        ("The force of gravity that the earth exerts on an object.",),
        ("Weight is mass times height.",),
    ),
    "free fall": (
        (
            "The only force acting on the object is the force of gravity.",
            "Motion during which gravity is the only force.",
        ),
        ("A body falls with a constant velocity.",),
    ),
    "acceleration in free fall": (
        ("It points down all the way, at the highest point too.",),
        ("It points in the direction of motion.",),
    ),
    "linear momentum": (
        (
            "The total momentum of a closed system stays constant.",
            "Total linear momentum is conserved in an isolated system.",
        ),
        ("The total kinetic energy before equals the total kinetic energy after.",),
    ),
    "in terms of momentum": (
        ("The resultant force is equal to the rate at which momentum changes, in the direction of that force.",),
        ("The net force equals mass times velocity.",),
    ),
    "impulse": (
        ("Impulse equals net force multiplied by the time interval during which it acts.",),
        ("Impulse is the rate of change of momentum.",),
    ),
    "elastic collision": (
        ("Total kinetic energy is conserved.", "The total kinetic energy is the same before and after the collision."),
        ("The total kinetic energy is smaller after the collision.",),
    ),
    "definition of work": (
        ("Product of force, displacement and the cosine of the angle between the two.",),
        ("Product of the force and the time.",),
    ),
    "work-energy theorem": (
        ("The total work done on a body equals the change in its kinetic energy.",),
        ("The net work equals the kinetic energy.",),
    ),
    "non-conservative force": (
        ("The work done by the force depends on the path taken.",),
        ("The work done does not depend on the path.",),
    ),
    "of a conservative force": (
        ("The work done by it between two points is independent of which path is taken.",),
        ("The work done depends on the path taken.",),
    ),
    "mechanical energy": (
        ("The total mechanical energy in an isolated system remains the same.",),
        ("The total mechanical energy of a body always decreases.",),
    ),
    "power": (("Power is work done per unit time.", "The rate of doing work."), ("Power is the work done.",)),
    "Doppler effect": (
        (
            (
                "An apparent change in the frequency of a sound because the source and the listener have different"
                " velocities relative to the medium."
            ),
            (
                "The change in frequency observed when source and listener move at different velocities relative to the"
                " medium."
            ),
        ),
        ("The change in the loudness of a sound when the source moves.",),
    ),
}

# Induction and alternating current, and the lamps on a generator.
PEAK_EMF = "f|Hz|n/60|||\nepsilon_max|V|2*pi*f*N*B*A||εmax = 2πfNBA|2*pi*f*B*A ~ turn|N;f*N*B*A ~ 2π|left"
QUESTIONS |= {
    "electrodynamics.flux-graph": [
        (
            {},
            {
                "rising": "epsilon_1|V|N*Phi_m/t_A|||Phi_m/t_A ~ turn|N",
                "falling": "epsilon_2|V|N*Phi_m/(t_C - t_B)|||N*Phi_m/t_C ~ time|change;Phi_m/(t_C - t_B) ~ turn|N",
                "current": "I|A|epsilon_2/R|epsilon_2 = I*R||R/epsilon_2 ~ over|round|upside",
            },
        )
    ],
    "electrodynamics.trace": [
        (
            {},
            {
                "frequency": "T|s|4*t_P|||t_P ~ quarter|period;2*t_P ~ half\nf|Hz|1/T|||",
                "rms": "epsilon_rms|V|epsilon_max/sqrt(2)|||epsilon_max*sqrt(2) ~ multipl|smaller",
                "peak": "I_max|A|epsilon_max/R|epsilon_max = I_max*R||epsilon_rms/R ~ rms|peak",
                "power": "P_av|W|epsilon_rms**2/R|||epsilon_max**2/R ~ peak|rms;epsilon_rms/R ~ square",
            },
        )
    ],
    "electrodynamics.kiln": [
        (
            {},
            {
                "rms": "V_rms|V|V_max/sqrt(2)|||V_max*sqrt(2) ~ multipl|smaller",
                "power": "P_av|W|V_rms**2/R|||V_max**2/R ~ peak|rms;V_rms/R ~ square",
                "peak": "I_max|A|V_max/R|V_max = I_max*R||V_rms/R ~ rms|peak",
                "energy": "W|J|P_av*Deltat|||P_av/Deltat ~ divid",
            },
        )
    ],
    "mixed.lamps": [
        (
            {},
            {
                "emf": f"{PEAK_EMF}\nepsilon_rms|V|epsilon_max/sqrt(2)|||epsilon_max*sqrt(2) ~ multipl|smaller",
                "pair": "R_p|Ω|1/(1/R1 + 1/R2)|1/R_p = 1/R1 + 1/R2;R_p = R1*R2/(R1 + R2)||R1 + R2 ~ add|recip|lower",
                "current": (
                    "R_T|Ω|R_c + R_p|||\nI|A|epsilon_rms/(R_T + r)|epsilon_rms = I*(R_T + r)|ε = I(R + r)"
                    "|epsilon_rms/R_T ~ coil|r;epsilon_max/(R_T + r) ~ rms|largest"
                ),
                "terminal": "V_ext|V|epsilon_rms - I*r|epsilon_rms = V_ext + I*r||I*r ~ coil|subtract",
                "power": "V_p|V|I*R_p|||\nP_1|W|V_p**2/R1|||V_p/R1 ~ square;I**2*R1 ~ total|divides",
                "energy": "W|J|P_1*Deltat|||P_1/Deltat ~ divid",
                "after": "I_2|A|epsilon_rms/(R_c + R1 + r)|||\nP_2|W|I_2**2*R1|||I_2*R1 ~ square",
            },
        )
    ],
}
LAWS |= {
    "Faraday's law": (
        (
            "The magnitude of the induced emf is directly proportional to the rate of change of magnetic flux linkage.",
            "The emf induced across a conductor is directly proportional to the rate of change of the magnetic flux"
            " linkage with the conductor.",
        ),
        (
            "The induced emf is directly proportional to the magnetic flux linkage.",
            "The induced emf is inversely proportional to the rate of change of magnetic flux linkage.",
        ),
    ),
    "Lenz's law": (
        (
            "The induced current flows in a direction such that it opposes the change that causes it.",
            "The direction of the induced current is such that its magnetic field opposes the change in flux.",
        ),
        ("The induced current flows in the direction of the change in flux.",),
    ),
    "rms value": (
        (
            "The rms value of an alternating current is the direct current that dissipates energy at the same rate in"
            " the same resistor.",
        ),
        ("The rms value is the peak value of the voltage.",),
    ),
}
