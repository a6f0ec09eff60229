"""The workbook of questions, and every engine by name; what is not of Python is marked.

HyperFormula is a witness of the tests alone.
"""

import pytest
import questions

from web.hyperformula import HyperFormula
from workbookgen.engines import ENGINES, engine

PROGRAMS = ("libreoffice", "gnumeric")


@pytest.fixture(scope="session")
def workbook(tmp_path_factory):
    path = tmp_path_factory.mktemp("engines") / "questions.xlsx"
    questions.write(path)
    return path


@pytest.fixture(
    params=[pytest.param(name, marks=pytest.mark.programs if name in PROGRAMS else ()) for name in ENGINES]
    + [pytest.param("hyperformula", marks=[pytest.mark.programs, pytest.mark.web])]
)
def each_engine(request):
    return HyperFormula() if request.param == "hyperformula" else engine(request.param)
